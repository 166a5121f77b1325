ALTER TABLE "Job" ADD COLUMN "taxReversed" BOOLEAN NOT NULL DEFAULT false;
-- Added, not rebuilt: the table keeps its triggers. The one against changes then knows the new column too.
ALTER TABLE "Invoice" ADD COLUMN "carriedMinor" INTEGER NOT NULL DEFAULT 0;
DROP TRIGGER "Invoice_never_changed";
CREATE TRIGGER "Invoice_never_changed" BEFORE UPDATE ON "Invoice"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."kind", NEW."series", NEW."number", NEW."jobId", NEW."correctsId", NEW."issuedAt", NEW."issuedOn", NEW."dueOn", NEW."suppliedOn", NEW."currency", NEW."taxInPrices", NEW."taxes", NEW."withoutTaxMinor", NEW."taxMinor", NEW."withTaxMinor", NEW."depositMinor", NEW."carriedMinor", NEW."who")
    IS NOT (OLD."id", OLD."kind", OLD."series", OLD."number", OLD."jobId", OLD."correctsId", OLD."issuedAt", OLD."issuedOn", OLD."dueOn", OLD."suppliedOn", OLD."currency", OLD."taxInPrices", OLD."taxes", OLD."withoutTaxMinor", OLD."taxMinor", OLD."withTaxMinor", OLD."depositMinor", OLD."carriedMinor", OLD."who")
BEGIN
    SELECT RAISE(ABORT, 'an invoice is never changed: issue a credit note');
END;
