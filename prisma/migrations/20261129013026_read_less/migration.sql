-- Places that were let go hold nothing: what their steps would have drawn goes with them.
DELETE FROM "StepDraw" WHERE "confirmedAt" IS NULL
    AND "jobId" IN (SELECT "id" FROM "Job" WHERE "status" IN ('lapsed', 'cancelled'));

-- What is left in a container, kept beside its moves: a shelf of years is mostly empty ones.
ALTER TABLE "Lot" ADD COLUMN "leftCenti" INTEGER NOT NULL DEFAULT 0;
UPDATE "Lot" SET "leftCenti" = (SELECT coalesce(sum("centi"), 0) FROM "StockMove" WHERE "lotId" = "Lot"."id");
CREATE INDEX "Lot_productId_leftCenti_number_idx" ON "Lot"("productId", "leftCenti", "number");
CREATE INDEX "Lot_productId_receivedOn_idx" ON "Lot"("productId", "receivedOn");
CREATE INDEX "Lot_leftCenti_idx" ON "Lot"("leftCenti");
DROP INDEX "Lot_productId_idx";
CREATE TRIGGER "StockMove_keeps_what_is_left" AFTER INSERT ON "StockMove"
BEGIN
    UPDATE "Lot" SET "leftCenti" = "leftCenti" + NEW."centi" WHERE "id" = NEW."lotId";
END;

DROP INDEX "Message_planId_ruleOn_idx";
CREATE INDEX "Message_planId_ruleOn_tryNo_id_channel_templateId_sentAt_idx" ON "Message"("planId", "ruleOn", "tryNo", "id", "channel", "templateId", "sentAt");
CREATE INDEX "Reading_sensorId_at_idx" ON "Reading"("sensorId", "at");
CREATE INDEX "UpkeepEntry_what_planId_ruleOn_idx" ON "UpkeepEntry"("what", "planId", "ruleOn");
