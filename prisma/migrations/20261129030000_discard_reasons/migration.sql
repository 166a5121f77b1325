-- AlterTable
ALTER TABLE "StockMove" ADD COLUMN "discard" TEXT;

-- What a move says went wrong is a fact too: not even an erasure rewrites it.
DROP TRIGGER "StockMove_never_changed";
CREATE TRIGGER "StockMove_never_changed" BEFORE UPDATE ON "StockMove"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."seq", NEW."lotId", NEW."productId", NEW."kind", NEW."centi", NEW."at", NEW."by", NEW."jobId", NEW."position", NEW."costMinor", NEW."correctsSeq", NEW."discard")
    IS NOT (OLD."seq", OLD."lotId", OLD."productId", OLD."kind", OLD."centi", OLD."at", OLD."by", OLD."jobId", OLD."position", OLD."costMinor", OLD."correctsSeq", OLD."discard")
BEGIN
    SELECT RAISE(ABORT, 'a move of the ledger is never changed');
END;
