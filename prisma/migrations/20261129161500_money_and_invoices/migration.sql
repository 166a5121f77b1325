-- CreateTable
CREATE TABLE "MoneyRules" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "taxInPrices" BOOLEAN NOT NULL DEFAULT false,
    "taxes" JSONB NOT NULL,
    "extras" JSONB NOT NULL DEFAULT [],
    "packages" JSONB NOT NULL DEFAULT [],
    "sharedOnce" BOOLEAN NOT NULL DEFAULT true,
    "depositPercent" TEXT NOT NULL DEFAULT '0',
    "cashStepMinor" INTEGER NOT NULL DEFAULT 1,
    "invoiceSeries" TEXT NOT NULL DEFAULT 'INV',
    "creditSeries" TEXT NOT NULL DEFAULT 'CN',
    "payWithinDays" INTEGER NOT NULL DEFAULT 14,
    "quoteDays" INTEGER NOT NULL DEFAULT 30,
    "labourMinor" INTEGER NOT NULL DEFAULT 0,
    "taxNumber" TEXT NOT NULL DEFAULT '',
    "payTo" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "JobCharge" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "treatmentId" TEXT,
    "words" TEXT NOT NULL,
    "quantity" TEXT NOT NULL DEFAULT '1',
    "amountMinor" INTEGER NOT NULL,
    "taxKey" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "JobCharge_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Invoice" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "series" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "jobId" TEXT NOT NULL,
    "correctsId" TEXT,
    "issuedAt" INTEGER NOT NULL,
    "issuedOn" TEXT NOT NULL,
    "dueOn" TEXT NOT NULL,
    "suppliedOn" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "taxInPrices" BOOLEAN NOT NULL,
    "seller" JSONB NOT NULL,
    "buyer" JSONB NOT NULL,
    "carWords" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "exemption" TEXT NOT NULL DEFAULT '',
    "reason" TEXT NOT NULL DEFAULT '',
    "allowanceReason" TEXT NOT NULL DEFAULT '',
    "taxes" JSONB NOT NULL,
    "withoutTaxMinor" INTEGER NOT NULL,
    "taxMinor" INTEGER NOT NULL,
    "withTaxMinor" INTEGER NOT NULL,
    "depositMinor" INTEGER NOT NULL DEFAULT 0,
    "who" TEXT NOT NULL,
    CONSTRAINT "Invoice_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Invoice_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "Invoice" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "InvoiceLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "invoiceId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "creditsLineId" TEXT,
    "name" TEXT NOT NULL,
    "quantity" TEXT NOT NULL,
    "priceMinor" INTEGER NOT NULL,
    "discountMinor" INTEGER NOT NULL DEFAULT 0,
    "discountReason" TEXT NOT NULL DEFAULT '',
    "amountMinor" INTEGER NOT NULL,
    "allowanceMinor" INTEGER NOT NULL DEFAULT 0,
    "netMinor" INTEGER NOT NULL,
    "ratePercent" TEXT NOT NULL,
    "category" TEXT NOT NULL,
    CONSTRAINT "InvoiceLine_invoiceId_fkey" FOREIGN KEY ("invoiceId") REFERENCES "Invoice" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Payment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "amountMinor" INTEGER NOT NULL,
    "tipMinor" INTEGER NOT NULL DEFAULT 0,
    "roundingMinor" INTEGER NOT NULL DEFAULT 0,
    "before" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "undoesId" TEXT,
    CONSTRAINT "Payment_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- AlterTable
ALTER TABLE "Job" ADD COLUMN "depositMinor" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "Job" ADD COLUMN "taxExempt" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Treatment" ADD COLUMN "taxKey" TEXT NOT NULL DEFAULT '';

-- CreateIndex
CREATE INDEX "JobCharge_jobId_idx" ON "JobCharge"("jobId");

-- CreateIndex
CREATE INDEX "Invoice_jobId_idx" ON "Invoice"("jobId");

-- CreateIndex
CREATE INDEX "Invoice_issuedAt_idx" ON "Invoice"("issuedAt");

-- CreateIndex
CREATE INDEX "Invoice_correctsId_idx" ON "Invoice"("correctsId");

-- CreateIndex
CREATE UNIQUE INDEX "Invoice_series_number_key" ON "Invoice"("series", "number");

-- CreateIndex
CREATE INDEX "InvoiceLine_creditsLineId_idx" ON "InvoiceLine"("creditsLineId");

-- CreateIndex
CREATE UNIQUE INDEX "InvoiceLine_invoiceId_position_key" ON "InvoiceLine"("invoiceId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "Payment_undoesId_key" ON "Payment"("undoesId");

-- CreateIndex
CREATE INDEX "Payment_jobId_idx" ON "Payment"("jobId");

-- CreateIndex
CREATE INDEX "Payment_at_idx" ON "Payment"("at");

-- What was issued or paid stays as it was, whoever writes. Only while an erasure is not done may its words be rewritten,
-- and its figures, days and numbers not even then.
CREATE TRIGGER "Invoice_never_changed" BEFORE UPDATE ON "Invoice"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."kind", NEW."series", NEW."number", NEW."jobId", NEW."correctsId", NEW."issuedAt", NEW."issuedOn", NEW."dueOn", NEW."suppliedOn", NEW."currency", NEW."taxInPrices", NEW."taxes", NEW."withoutTaxMinor", NEW."taxMinor", NEW."withTaxMinor", NEW."depositMinor", NEW."who")
    IS NOT (OLD."id", OLD."kind", OLD."series", OLD."number", OLD."jobId", OLD."correctsId", OLD."issuedAt", OLD."issuedOn", OLD."dueOn", OLD."suppliedOn", OLD."currency", OLD."taxInPrices", OLD."taxes", OLD."withoutTaxMinor", OLD."taxMinor", OLD."withTaxMinor", OLD."depositMinor", OLD."who")
BEGIN
    SELECT RAISE(ABORT, 'an invoice is never changed: issue a credit note');
END;
CREATE TRIGGER "Invoice_never_deleted" BEFORE DELETE ON "Invoice"
BEGIN
    SELECT RAISE(ABORT, 'an invoice is never deleted: issue a credit note');
END;
CREATE TRIGGER "InvoiceLine_never_changed" BEFORE UPDATE ON "InvoiceLine"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."invoiceId", NEW."position", NEW."creditsLineId", NEW."quantity", NEW."priceMinor", NEW."discountMinor", NEW."amountMinor", NEW."allowanceMinor", NEW."netMinor", NEW."ratePercent", NEW."category")
    IS NOT (OLD."id", OLD."invoiceId", OLD."position", OLD."creditsLineId", OLD."quantity", OLD."priceMinor", OLD."discountMinor", OLD."amountMinor", OLD."allowanceMinor", OLD."netMinor", OLD."ratePercent", OLD."category")
BEGIN
    SELECT RAISE(ABORT, 'a line of an invoice is never changed: issue a credit note');
END;
CREATE TRIGGER "InvoiceLine_never_deleted" BEFORE DELETE ON "InvoiceLine"
BEGIN
    SELECT RAISE(ABORT, 'a line of an invoice is never deleted: issue a credit note');
END;
CREATE TRIGGER "Payment_never_changed" BEFORE UPDATE ON "Payment"
WHEN NOT EXISTS (SELECT 1 FROM "Erasure" WHERE "done" = 0)
    OR (NEW."id", NEW."jobId", NEW."at", NEW."who", NEW."method", NEW."amountMinor", NEW."tipMinor", NEW."roundingMinor", NEW."before", NEW."undoesId")
    IS NOT (OLD."id", OLD."jobId", OLD."at", OLD."who", OLD."method", OLD."amountMinor", OLD."tipMinor", OLD."roundingMinor", OLD."before", OLD."undoesId")
BEGIN
    SELECT RAISE(ABORT, 'a payment is never changed: take it back');
END;
CREATE TRIGGER "Payment_never_deleted" BEFORE DELETE ON "Payment"
BEGIN
    SELECT RAISE(ABORT, 'a payment is never deleted: take it back');
END;
