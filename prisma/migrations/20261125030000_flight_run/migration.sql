-- Computed flights kept with the candidate that they support: written once, never changed.
CREATE TABLE "flight_run" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "candidateId" TEXT NOT NULL,
    "engine" TEXT NOT NULL,
    "conditions" TEXT NOT NULL,
    "figures" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "flight_run_pkey" PRIMARY KEY ("operatorId","id")
);

CREATE INDEX "flight_run_operatorId_candidateId_idx" ON "flight_run"("operatorId", "candidateId");

ALTER TABLE "flight_run" ADD CONSTRAINT "flight_run_operatorId_candidateId_fkey" FOREIGN KEY ("operatorId", "candidateId") REFERENCES "candidate"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- The same walls as around every other table of an operator.
ALTER TABLE "flight_run" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_operator ON "flight_run" USING ("operatorId" = current_setting('cuewright.operator', true));
GRANT SELECT, INSERT ON "flight_run" TO cuewright_app;
CREATE TRIGGER "stays_as_written" BEFORE UPDATE OR DELETE OR TRUNCATE ON "flight_run" FOR EACH STATEMENT EXECUTE FUNCTION "stays_as_written"();
