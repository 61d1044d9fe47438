-- CreateTable
CREATE TABLE "fleet" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "type" TEXT NOT NULL,

    CONSTRAINT "fleet_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "tail" (
    "operatorId" TEXT NOT NULL,
    "registration" TEXT NOT NULL,
    "fleetId" TEXT NOT NULL,

    CONSTRAINT "tail_pkey" PRIMARY KEY ("operatorId","registration")
);

-- CreateTable
CREATE TABLE "tail_option" (
    "operatorId" TEXT NOT NULL,
    "registration" TEXT NOT NULL,
    "option" TEXT NOT NULL,
    "heldFrom" TIMESTAMPTZ(3) NOT NULL,
    "value" TEXT NOT NULL,
    "releasedById" TEXT NOT NULL,

    CONSTRAINT "tail_option_pkey" PRIMARY KEY ("operatorId","registration","option","heldFrom")
);

-- CreateTable
CREATE TABLE "sheet_revision" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "type" TEXT NOT NULL,
    "revision" TEXT NOT NULL,
    "content" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "sources" JSONB NOT NULL,
    "importedById" TEXT NOT NULL,
    "importedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sheet_revision_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "policy_version" (
    "operatorId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "content" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "madeById" TEXT NOT NULL,
    "madeAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "policy_version_pkey" PRIMARY KEY ("operatorId","version")
);

-- CreateTable
CREATE TABLE "library_entry" (
    "operatorId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "content" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "madeById" TEXT NOT NULL,
    "madeAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "library_entry_pkey" PRIMARY KEY ("operatorId","kind","key","version")
);

-- CreateTable
CREATE TABLE "candidate" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "procedureId" TEXT NOT NULL,
    "draftId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "content" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "head" JSONB NOT NULL,
    "sheetRevisionId" TEXT,
    "policyVersion" INTEGER NOT NULL,
    "checkSet" TEXT NOT NULL,
    "checked" JSONB NOT NULL,
    "notChecked" JSONB NOT NULL,
    "submittedById" TEXT NOT NULL,
    "submittedAt" TIMESTAMPTZ(3) NOT NULL,
    "note" TEXT NOT NULL,
    "state" TEXT NOT NULL,

    CONSTRAINT "candidate_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "finding" (
    "operatorId" TEXT NOT NULL,
    "candidateId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "check" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "severity" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "field" TEXT NOT NULL,
    "message" TEXT NOT NULL,
    "witness" JSONB NOT NULL,
    "fix" JSONB,
    "cause" TEXT NOT NULL,
    "read" TEXT NOT NULL,
    "answerId" TEXT,

    CONSTRAINT "finding_pkey" PRIMARY KEY ("operatorId","candidateId","position")
);

-- CreateTable
CREATE TABLE "review" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "candidateId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "verdict" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "riskNote" TEXT NOT NULL,
    "statement" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "review_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "sign_off" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "candidateId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "verdict" TEXT NOT NULL,
    "roleHeld" TEXT NOT NULL,
    "statement" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "binds" TEXT NOT NULL,
    "bindsSha256" TEXT NOT NULL,
    "effectiveFrom" TIMESTAMPTZ(3),
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sign_off_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "issue" (
    "operatorId" TEXT NOT NULL,
    "procedureId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "candidateId" TEXT NOT NULL,
    "signOffId" TEXT NOT NULL,

    CONSTRAINT "issue_pkey" PRIMARY KEY ("operatorId","procedureId","number")
);

-- CreateTable
CREATE TABLE "in_force_interval" (
    "operatorId" TEXT NOT NULL,
    "procedureId" TEXT NOT NULL,
    "issueNumber" INTEGER NOT NULL,
    "startsAt" TIMESTAMPTZ(3) NOT NULL,
    "endsAt" TIMESTAMPTZ(3),

    CONSTRAINT "in_force_interval_pkey" PRIMARY KEY ("operatorId","procedureId","issueNumber")
);

-- CreateTable
CREATE TABLE "acknowledgement" (
    "operatorId" TEXT NOT NULL,
    "procedureId" TEXT NOT NULL,
    "issueNumber" INTEGER NOT NULL,
    "personId" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "acknowledgement_pkey" PRIMARY KEY ("operatorId","procedureId","issueNumber","personId")
);

-- CreateTable
CREATE TABLE "record_entry" (
    "operatorId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "personId" TEXT,
    "act" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "previous" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "record_entry_pkey" PRIMARY KEY ("operatorId","seq")
);

-- CreateTable
CREATE TABLE "operator" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "operator_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person" (
    "id" TEXT NOT NULL,
    "signInName" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership" (
    "operatorId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "endedAt" TIMESTAMPTZ(3),

    CONSTRAINT "membership_pkey" PRIMARY KEY ("operatorId","personId")
);

-- CreateTable
CREATE TABLE "role_grant" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "heldFrom" TIMESTAMPTZ(3) NOT NULL,
    "heldUntil" TIMESTAMPTZ(3),

    CONSTRAINT "role_grant_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "password_credential" (
    "personId" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "changedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "password_credential_pkey" PRIMARY KEY ("personId")
);

-- CreateTable
CREATE TABLE "session" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "startedAt" TIMESTAMPTZ(3) NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "revokedAt" TIMESTAMPTZ(3),
    "revokedBecause" TEXT,

    CONSTRAINT "session_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "sign_in_failure" (
    "id" BIGSERIAL NOT NULL,
    "typed" TEXT NOT NULL,
    "failedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sign_in_failure_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "procedure" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "labelPrefix" TEXT,
    "createdById" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "procedure_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "step_label" (
    "operatorId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "procedureId" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,

    CONSTRAINT "step_label_pkey" PRIMARY KEY ("operatorId","label")
);

-- CreateTable
CREATE TABLE "change_request" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "procedureId" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "riskNote" TEXT NOT NULL,
    "ownerId" TEXT NOT NULL,
    "dueOn" DATE,
    "openedById" TEXT NOT NULL,
    "openedAt" TIMESTAMPTZ(3) NOT NULL,
    "state" TEXT NOT NULL,

    CONSTRAINT "change_request_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "draft" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "procedureId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "changeRequestId" TEXT NOT NULL,
    "startedById" TEXT NOT NULL,
    "startedAt" TIMESTAMPTZ(3) NOT NULL,
    "closedAt" TIMESTAMPTZ(3),
    "state" TEXT NOT NULL,

    CONSTRAINT "draft_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateTable
CREATE TABLE "draft_update" (
    "operatorId" TEXT NOT NULL,
    "draftId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "update" BYTEA NOT NULL,
    "personId" TEXT,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "draft_update_pkey" PRIMARY KEY ("operatorId","draftId","seq")
);

-- CreateTable
CREATE TABLE "draft_snapshot" (
    "operatorId" TEXT NOT NULL,
    "draftId" TEXT NOT NULL,
    "upTo" INTEGER NOT NULL,
    "state" BYTEA NOT NULL,

    CONSTRAINT "draft_snapshot_pkey" PRIMARY KEY ("operatorId","draftId")
);

-- CreateTable
CREATE TABLE "finding_answer" (
    "operatorId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "procedureId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "check" TEXT NOT NULL,
    "read" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "field" TEXT NOT NULL,
    "message" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "until" DATE,
    "personId" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "finding_answer_pkey" PRIMARY KEY ("operatorId","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "fleet_operatorId_name_key" ON "fleet"("operatorId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "sheet_revision_operatorId_type_revision_key" ON "sheet_revision"("operatorId", "type", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "candidate_operatorId_draftId_key" ON "candidate"("operatorId", "draftId");

-- CreateIndex
CREATE UNIQUE INDEX "candidate_operatorId_procedureId_number_key" ON "candidate"("operatorId", "procedureId", "number");

-- CreateIndex
CREATE INDEX "review_operatorId_candidateId_idx" ON "review"("operatorId", "candidateId");

-- CreateIndex
CREATE INDEX "sign_off_operatorId_candidateId_idx" ON "sign_off"("operatorId", "candidateId");

-- CreateIndex
CREATE UNIQUE INDEX "issue_operatorId_candidateId_key" ON "issue"("operatorId", "candidateId");

-- CreateIndex
CREATE UNIQUE INDEX "issue_operatorId_signOffId_key" ON "issue"("operatorId", "signOffId");

-- CreateIndex
CREATE INDEX "record_entry_operatorId_subject_idx" ON "record_entry"("operatorId", "subject");

-- CreateIndex
CREATE UNIQUE INDEX "operator_name_key" ON "operator"("name");

-- CreateIndex
CREATE UNIQUE INDEX "person_signInName_key" ON "person"("signInName");

-- CreateIndex
CREATE INDEX "role_grant_operatorId_personId_idx" ON "role_grant"("operatorId", "personId");

-- CreateIndex
CREATE INDEX "session_operatorId_personId_idx" ON "session"("operatorId", "personId");

-- CreateIndex
CREATE INDEX "sign_in_failure_typed_failedAt_idx" ON "sign_in_failure"("typed", "failedAt");

-- CreateIndex
CREATE UNIQUE INDEX "procedure_operatorId_labelPrefix_key" ON "procedure"("operatorId", "labelPrefix");

-- CreateIndex
CREATE UNIQUE INDEX "step_label_operatorId_procedureId_stepId_key" ON "step_label"("operatorId", "procedureId", "stepId");

-- CreateIndex
CREATE UNIQUE INDEX "draft_operatorId_procedureId_number_key" ON "draft"("operatorId", "procedureId", "number");

-- CreateIndex
CREATE INDEX "finding_answer_operatorId_procedureId_check_read_idx" ON "finding_answer"("operatorId", "procedureId", "check", "read");

-- AddForeignKey
ALTER TABLE "fleet" ADD CONSTRAINT "fleet_operatorId_fkey" FOREIGN KEY ("operatorId") REFERENCES "operator"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tail" ADD CONSTRAINT "tail_operatorId_fleetId_fkey" FOREIGN KEY ("operatorId", "fleetId") REFERENCES "fleet"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tail_option" ADD CONSTRAINT "tail_option_operatorId_registration_fkey" FOREIGN KEY ("operatorId", "registration") REFERENCES "tail"("operatorId", "registration") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sheet_revision" ADD CONSTRAINT "sheet_revision_operatorId_fkey" FOREIGN KEY ("operatorId") REFERENCES "operator"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "policy_version" ADD CONSTRAINT "policy_version_operatorId_fkey" FOREIGN KEY ("operatorId") REFERENCES "operator"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "library_entry" ADD CONSTRAINT "library_entry_operatorId_fkey" FOREIGN KEY ("operatorId") REFERENCES "operator"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "candidate" ADD CONSTRAINT "candidate_operatorId_procedureId_fkey" FOREIGN KEY ("operatorId", "procedureId") REFERENCES "procedure"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "candidate" ADD CONSTRAINT "candidate_operatorId_draftId_fkey" FOREIGN KEY ("operatorId", "draftId") REFERENCES "draft"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "candidate" ADD CONSTRAINT "candidate_operatorId_sheetRevisionId_fkey" FOREIGN KEY ("operatorId", "sheetRevisionId") REFERENCES "sheet_revision"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "candidate" ADD CONSTRAINT "candidate_operatorId_policyVersion_fkey" FOREIGN KEY ("operatorId", "policyVersion") REFERENCES "policy_version"("operatorId", "version") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding" ADD CONSTRAINT "finding_operatorId_candidateId_fkey" FOREIGN KEY ("operatorId", "candidateId") REFERENCES "candidate"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding" ADD CONSTRAINT "finding_operatorId_answerId_fkey" FOREIGN KEY ("operatorId", "answerId") REFERENCES "finding_answer"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "review" ADD CONSTRAINT "review_operatorId_candidateId_fkey" FOREIGN KEY ("operatorId", "candidateId") REFERENCES "candidate"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_operatorId_candidateId_fkey" FOREIGN KEY ("operatorId", "candidateId") REFERENCES "candidate"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "issue" ADD CONSTRAINT "issue_operatorId_procedureId_fkey" FOREIGN KEY ("operatorId", "procedureId") REFERENCES "procedure"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "issue" ADD CONSTRAINT "issue_operatorId_candidateId_fkey" FOREIGN KEY ("operatorId", "candidateId") REFERENCES "candidate"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "issue" ADD CONSTRAINT "issue_operatorId_signOffId_fkey" FOREIGN KEY ("operatorId", "signOffId") REFERENCES "sign_off"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "in_force_interval" ADD CONSTRAINT "in_force_interval_operatorId_procedureId_issueNumber_fkey" FOREIGN KEY ("operatorId", "procedureId", "issueNumber") REFERENCES "issue"("operatorId", "procedureId", "number") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "acknowledgement" ADD CONSTRAINT "acknowledgement_operatorId_procedureId_issueNumber_fkey" FOREIGN KEY ("operatorId", "procedureId", "issueNumber") REFERENCES "issue"("operatorId", "procedureId", "number") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "acknowledgement" ADD CONSTRAINT "acknowledgement_operatorId_personId_fkey" FOREIGN KEY ("operatorId", "personId") REFERENCES "membership"("operatorId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "record_entry" ADD CONSTRAINT "record_entry_operatorId_fkey" FOREIGN KEY ("operatorId") REFERENCES "operator"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_operatorId_fkey" FOREIGN KEY ("operatorId") REFERENCES "operator"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_personId_fkey" FOREIGN KEY ("personId") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "role_grant" ADD CONSTRAINT "role_grant_operatorId_personId_fkey" FOREIGN KEY ("operatorId", "personId") REFERENCES "membership"("operatorId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "password_credential" ADD CONSTRAINT "password_credential_personId_fkey" FOREIGN KEY ("personId") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_operatorId_personId_fkey" FOREIGN KEY ("operatorId", "personId") REFERENCES "membership"("operatorId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "procedure" ADD CONSTRAINT "procedure_operatorId_fkey" FOREIGN KEY ("operatorId") REFERENCES "operator"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "step_label" ADD CONSTRAINT "step_label_operatorId_procedureId_fkey" FOREIGN KEY ("operatorId", "procedureId") REFERENCES "procedure"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "change_request" ADD CONSTRAINT "change_request_operatorId_procedureId_fkey" FOREIGN KEY ("operatorId", "procedureId") REFERENCES "procedure"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "draft" ADD CONSTRAINT "draft_operatorId_procedureId_fkey" FOREIGN KEY ("operatorId", "procedureId") REFERENCES "procedure"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "draft" ADD CONSTRAINT "draft_operatorId_changeRequestId_fkey" FOREIGN KEY ("operatorId", "changeRequestId") REFERENCES "change_request"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "draft_update" ADD CONSTRAINT "draft_update_operatorId_draftId_fkey" FOREIGN KEY ("operatorId", "draftId") REFERENCES "draft"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "draft_snapshot" ADD CONSTRAINT "draft_snapshot_operatorId_draftId_fkey" FOREIGN KEY ("operatorId", "draftId") REFERENCES "draft"("operatorId", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_answer" ADD CONSTRAINT "finding_answer_operatorId_procedureId_fkey" FOREIGN KEY ("operatorId", "procedureId") REFERENCES "procedure"("operatorId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- At most one open draft, one candidate under review and one unended interval a procedure.
CREATE UNIQUE INDEX "draft_one_open" ON "draft" ("operatorId", "procedureId") WHERE "closedAt" IS NULL;
CREATE UNIQUE INDEX "candidate_one_under_review" ON "candidate" ("operatorId", "procedureId") WHERE "state" IN ('waiting', 'recommended');
CREATE UNIQUE INDEX "in_force_one_unended" ON "in_force_interval" ("operatorId", "procedureId") WHERE "endsAt" IS NULL;

ALTER TABLE "role_grant" ADD CONSTRAINT "role_known" CHECK ("role" IN ('technical pilot', 'training captain', 'standards captain', 'approver', 'line pilot', 'auditor', 'administrator'));
ALTER TABLE "change_request" ADD CONSTRAINT "state_known" CHECK ("state" IN ('open', 'closed'));
ALTER TABLE "draft" ADD CONSTRAINT "state_known" CHECK ("state" IN ('open', 'submitted', 'dropped') AND ("state" = 'open') = ("closedAt" IS NULL));
ALTER TABLE "candidate" ADD CONSTRAINT "state_known" CHECK ("state" IN ('waiting', 'recommended', 'signed', 'sent back', 'refused', 'withdrawn'));
ALTER TABLE "review" ADD CONSTRAINT "verdict_known" CHECK ("verdict" IN ('recommended', 'sent back', 'withdrawn'));
ALTER TABLE "sign_off" ADD CONSTRAINT "verdict_known" CHECK ("verdict" IN ('signed', 'refused'));
ALTER TABLE "finding_answer" ADD CONSTRAINT "waiver_expires" CHECK ("kind" = 'answer' OR ("kind" = 'waiver' AND "until" IS NOT NULL));
ALTER TABLE "in_force_interval" ADD CONSTRAINT "in_order" CHECK ("endsAt" IS NULL OR "endsAt" >= "startsAt");
ALTER TABLE "library_entry" ADD CONSTRAINT "kind_known" CHECK ("kind" IN ('aerodrome', 'callout', 'term', 'checklist', 'source'));

-- The second wall: a transaction sees the rows of the operator it has named, and no others.
DO $$
DECLARE
  name text;
BEGIN
  FOR name IN SELECT c.table_name FROM information_schema.columns c WHERE c.table_schema = 'public' AND c.column_name = 'operatorId' AND c.table_name <> 'membership'
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY own_operator ON %I USING ("operatorId" = current_setting(''cuewright.operator'', true))', name);
  END LOOP;
END $$;

ALTER TABLE "operator" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_operator ON "operator" USING ("id" = current_setting('cuewright.operator', true));

-- Before sign-in no operator is known: a transaction may look up the one name that was typed, and that person's memberships.
ALTER TABLE "membership" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_operator ON "membership" USING (
  "operatorId" = current_setting('cuewright.operator', true) OR "personId" = current_setting('cuewright.person', true)
);
ALTER TABLE "person" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_operator ON "person" USING (
  "signInName" = current_setting('cuewright.signing_in', true)
  OR EXISTS (SELECT 1 FROM "membership" m WHERE m."personId" = "person"."id" AND m."operatorId" = current_setting('cuewright.operator', true))
);
ALTER TABLE "password_credential" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_operator ON "password_credential" USING (EXISTS (SELECT 1 FROM "person" p WHERE p."id" = "password_credential"."personId"));
ALTER TABLE "sign_in_failure" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_name ON "sign_in_failure" USING ("typed" = current_setting('cuewright.signing_in', true));

-- What the app may do. A column that is not named here never changes once written.
REVOKE CREATE ON SCHEMA public FROM PUBLIC;
GRANT USAGE ON SCHEMA public TO cuewright_app;
GRANT SELECT, INSERT ON
  "operator", "person", "membership", "role_grant", "password_credential", "session", "sign_in_failure", "fleet", "tail",
  "tail_option", "sheet_revision", "policy_version", "library_entry", "procedure", "step_label", "change_request", "draft",
  "draft_update", "draft_snapshot", "finding_answer", "candidate", "finding", "review", "sign_off", "issue",
  "in_force_interval", "acknowledgement", "record_entry"
TO cuewright_app;
GRANT USAGE ON SEQUENCE "sign_in_failure_id_seq" TO cuewright_app;
GRANT UPDATE ("name", "signInName") ON "person" TO cuewright_app;
GRANT UPDATE ("title", "endedAt") ON "membership" TO cuewright_app;
GRANT UPDATE ("heldUntil") ON "role_grant" TO cuewright_app;
GRANT UPDATE ("hash", "changedAt") ON "password_credential" TO cuewright_app;
GRANT UPDATE ("revokedAt", "revokedBecause") ON "session" TO cuewright_app;
GRANT UPDATE ("title", "labelPrefix") ON "procedure" TO cuewright_app;
GRANT UPDATE ("riskNote", "dueOn", "state") ON "change_request" TO cuewright_app;
GRANT UPDATE ("closedAt", "state") ON "draft" TO cuewright_app;
GRANT UPDATE ("state") ON "candidate" TO cuewright_app;
GRANT UPDATE ("endsAt") ON "in_force_interval" TO cuewright_app;
GRANT UPDATE ("upTo", "state"), DELETE ON "draft_snapshot" TO cuewright_app;
GRANT DELETE ON "sign_in_failure" TO cuewright_app;

-- What was recorded stays, even against the owner's mistake; an owner who means it must drop these triggers first.
CREATE FUNCTION "stays_as_written"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is insert-only: % refused', TG_TABLE_NAME, TG_OP USING ERRCODE = 'insufficient_privilege';
END $$;
CREATE TRIGGER "stays_as_written" BEFORE UPDATE OR DELETE OR TRUNCATE ON "record_entry" FOR EACH STATEMENT EXECUTE FUNCTION "stays_as_written"();
CREATE TRIGGER "stays_as_written" BEFORE UPDATE OR DELETE OR TRUNCATE ON "draft_update" FOR EACH STATEMENT EXECUTE FUNCTION "stays_as_written"();
CREATE TRIGGER "stays_as_written" BEFORE UPDATE OR DELETE OR TRUNCATE ON "acknowledgement" FOR EACH STATEMENT EXECUTE FUNCTION "stays_as_written"();
CREATE TRIGGER "stays_as_written" BEFORE UPDATE OR DELETE OR TRUNCATE ON "sign_off" FOR EACH STATEMENT EXECUTE FUNCTION "stays_as_written"();
