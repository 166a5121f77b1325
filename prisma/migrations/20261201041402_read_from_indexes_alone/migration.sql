-- DropIndex
DROP INDEX "PlanDue_inUse_dueOn_planId_lastOn_firstOn_kind_idx";

-- CreateIndex
CREATE INDEX "Job_leftAt_idx" ON "Job"("leftAt");

-- CreateIndex
CREATE INDEX "PlanDue_inUse_dueOn_planId_lastOn_firstOn_kind_ruleOn_idx" ON "PlanDue"("inUse", "dueOn", "planId", "lastOn", "firstOn", "kind", "ruleOn");

-- CreateIndex
CREATE INDEX "UpkeepPlan_id_title_idx" ON "UpkeepPlan"("id", "title");
