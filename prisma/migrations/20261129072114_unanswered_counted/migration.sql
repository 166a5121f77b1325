-- CreateIndex
CREATE INDEX "Message_unanswered_idx" ON "Message"("unanswered");
