-- CreateTable
CREATE TABLE "Erasure" (
    "customerId" TEXT NOT NULL PRIMARY KEY,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "done" BOOLEAN NOT NULL DEFAULT false
);

-- CreateIndex
CREATE INDEX "AuditLine_at_id_idx" ON "AuditLine"("at", "id");

-- CreateIndex
CREATE INDEX "AuditLine_entity_at_idx" ON "AuditLine"("entity", "at");

-- CreateIndex
CREATE INDEX "AuditLine_act_at_idx" ON "AuditLine"("act", "at");

-- CreateIndex
CREATE INDEX "AuditLine_who_at_idx" ON "AuditLine"("who", "at");

-- What is never changed stays so, whoever writes. Only while an erasure is not done may its words be rewritten, and its
-- figures, times and names of the crew not even then.
CREATE TRIGGER "Erasure_never_reopened" BEFORE UPDATE ON "Erasure" WHEN OLD."done" <> 0
BEGIN
    SELECT RAISE(ABORT, 'an erasure is never opened again');
END;
CREATE TRIGGER "Erasure_never_deleted" BEFORE DELETE ON "Erasure"
BEGIN
    SELECT RAISE(ABORT, 'an erasure is never deleted');
END;
CREATE TRIGGER "AuditLine_never_changed" BEFORE UPDATE ON "AuditLine"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."at", NEW."who", NEW."act", NEW."entity") IS NOT (OLD."id", OLD."at", OLD."who", OLD."act", OLD."entity")
BEGIN
    SELECT RAISE(ABORT, 'an audit line is never changed');
END;
CREATE TRIGGER "AuditLine_never_deleted" BEFORE DELETE ON "AuditLine"
BEGIN
    SELECT RAISE(ABORT, 'an audit line is never deleted');
END;
DROP TRIGGER "StockMove_never_changed";
CREATE TRIGGER "StockMove_never_changed" BEFORE UPDATE ON "StockMove"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."seq", NEW."lotId", NEW."productId", NEW."kind", NEW."centi", NEW."at", NEW."by", NEW."jobId", NEW."position", NEW."costMinor", NEW."correctsSeq")
    IS NOT (OLD."seq", OLD."lotId", OLD."productId", OLD."kind", OLD."centi", OLD."at", OLD."by", OLD."jobId", OLD."position", OLD."costMinor", OLD."correctsSeq")
BEGIN
    SELECT RAISE(ABORT, 'a move of the ledger is never changed');
END;
DROP TRIGGER "AppliedEntry_never_changed";
CREATE TRIGGER "AppliedEntry_never_changed" BEFORE UPDATE ON "AppliedEntry"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."recordId", NEW."number", NEW."signedBy", NEW."signedAt", NEW."correctsId")
    IS NOT (OLD."id", OLD."recordId", OLD."number", OLD."signedBy", OLD."signedAt", OLD."correctsId")
BEGIN
    SELECT RAISE(ABORT, 'a signed entry is never changed: sign a correction');
END;
DROP TRIGGER "AppliedRecord_kept_once_signed";
CREATE TRIGGER "AppliedRecord_kept_once_signed" BEFORE UPDATE ON "AppliedRecord"
WHEN EXISTS (SELECT 1 FROM "AppliedEntry" WHERE "recordId" = OLD."id")
    AND (NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
        OR (NEW."id", NEW."jobId", NEW."version") IS NOT (OLD."id", OLD."jobId", OLD."version"))
BEGIN
    SELECT RAISE(ABORT, 'a signed record is never changed: sign a correction');
END;
DROP TRIGGER "ConditionCheck_never_changed";
CREATE TRIGGER "ConditionCheck_never_changed" BEFORE UPDATE ON "ConditionCheck"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."jobId", NEW."position", NEW."at", NEW."who", NEW."productName", NEW."readingAt", NEW."airC", NEW."humidityPercent", NEW."panelC", NEW."dewC", NEW."marginC", NEW."warnings")
    IS NOT (OLD."id", OLD."jobId", OLD."position", OLD."at", OLD."who", OLD."productName", OLD."readingAt", OLD."airC", OLD."humidityPercent", OLD."panelC", OLD."dewC", OLD."marginC", OLD."warnings")
BEGIN
    SELECT RAISE(ABORT, 'the conditions of a coat are never changed');
END;
