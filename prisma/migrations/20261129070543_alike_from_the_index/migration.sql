-- DropIndex
DROP INDEX "PlanDue_inUse_alike_dueOn_ruleOn_idx";

-- CreateIndex
CREATE INDEX "PlanDue_inUse_alike_dueOn_ruleOn_kind_planId_idx" ON "PlanDue"("inUse", "alike", "dueOn", "ruleOn", "kind", "planId");
