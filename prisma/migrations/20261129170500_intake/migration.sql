-- CreateTable
CREATE TABLE "Intake" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "draft" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Intake_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "IntakeEntry" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "intakeId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "ownerName" TEXT NOT NULL,
    "signature" TEXT NOT NULL,
    "signedAt" INTEGER NOT NULL,
    "correctsId" TEXT,
    CONSTRAINT "IntakeEntry_intakeId_fkey" FOREIGN KEY ("intakeId") REFERENCES "Intake" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "IntakeEntry_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "IntakeEntry" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobPhoto" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "size" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    CONSTRAINT "JobPhoto_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AfterWork" (
    "jobId" TEXT NOT NULL PRIMARY KEY,
    "content" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "AfterWork_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PaintDecision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "rule" TEXT NOT NULL,
    "treatment" TEXT NOT NULL,
    "panels" JSONB NOT NULL,
    "decision" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    CONSTRAINT "PaintDecision_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Intake_jobId_key" ON "Intake"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "IntakeEntry_intakeId_number_key" ON "IntakeEntry"("intakeId", "number");

-- CreateIndex
CREATE INDEX "JobPhoto_jobId_idx" ON "JobPhoto"("jobId");

-- CreateIndex
CREATE INDEX "JobPhoto_sha256_idx" ON "JobPhoto"("sha256");

-- CreateIndex
CREATE INDEX "PaintDecision_jobId_idx" ON "PaintDecision"("jobId");

-- Signed pages and decisions are never changed: only an erasure that is under way rewrites their words.
CREATE TRIGGER "IntakeEntry_never_changed" BEFORE UPDATE ON "IntakeEntry"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."intakeId", NEW."number", NEW."signedAt", NEW."correctsId")
    IS NOT (OLD."id", OLD."intakeId", OLD."number", OLD."signedAt", OLD."correctsId")
BEGIN
    SELECT RAISE(ABORT, 'a signed intake is never changed: sign a correction');
END;
CREATE TRIGGER "IntakeEntry_never_deleted" BEFORE DELETE ON "IntakeEntry"
BEGIN
    SELECT RAISE(ABORT, 'a signed intake is never deleted');
END;
CREATE TRIGGER "Intake_kept_once_signed" BEFORE UPDATE ON "Intake"
WHEN EXISTS (SELECT 1 FROM "IntakeEntry" WHERE "intakeId" = OLD."id")
    AND (NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
        OR (NEW."id", NEW."jobId", NEW."version") IS NOT (OLD."id", OLD."jobId", OLD."version"))
BEGIN
    SELECT RAISE(ABORT, 'a signed intake is never changed: sign a correction');
END;
CREATE TRIGGER "PaintDecision_never_changed" BEFORE UPDATE ON "PaintDecision"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."jobId", NEW."rule", NEW."treatment", NEW."panels", NEW."decision", NEW."at", NEW."who")
    IS NOT (OLD."id", OLD."jobId", OLD."rule", OLD."treatment", OLD."panels", OLD."decision", OLD."at", OLD."who")
BEGIN
    SELECT RAISE(ABORT, 'a decision about the paint is never changed: decide again');
END;
CREATE TRIGGER "PaintDecision_never_deleted" BEFORE DELETE ON "PaintDecision"
BEGIN
    SELECT RAISE(ABORT, 'a decision about the paint is never deleted');
END;
