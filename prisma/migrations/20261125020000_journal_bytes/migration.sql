-- The size of a journal is read from its last row, not summed anew at every keystroke.
ALTER TABLE "draft_update" ADD COLUMN "total" INTEGER NOT NULL DEFAULT 0;
