-- DropIndex
DROP INDEX "Invoice_jobId_idx";

-- DropIndex
DROP INDEX "Message_state_channel_idx";

-- DropIndex
DROP INDEX "Payment_jobId_idx";

-- CreateIndex
CREATE INDEX "Invoice_jobId_kind_withTaxMinor_idx" ON "Invoice"("jobId", "kind", "withTaxMinor");

-- CreateIndex
CREATE INDEX "Message_state_createdAt_idx" ON "Message"("state", "createdAt");

-- CreateIndex
CREATE INDEX "Message_state_sentAt_idx" ON "Message"("state", "sentAt");

-- CreateIndex
CREATE INDEX "Message_address_idx" ON "Message"("address");

-- CreateIndex
CREATE INDEX "Payment_jobId_amountMinor_idx" ON "Payment"("jobId", "amountMinor");
