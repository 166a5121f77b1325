-- CreateTable
CREATE TABLE "PlanDue" (
    "planId" TEXT NOT NULL PRIMARY KEY,
    "vehicleId" TEXT NOT NULL,
    "customerId" TEXT NOT NULL DEFAULT '',
    "kind" TEXT NOT NULL,
    "throughOn" TEXT NOT NULL DEFAULT '',
    "inUse" BOOLEAN NOT NULL DEFAULT false,
    "failed" BOOLEAN NOT NULL DEFAULT false,
    "ruleOn" TEXT,
    "dueOn" TEXT,
    "firstOn" TEXT,
    "lastOn" TEXT,
    "alike" TEXT
);

-- CreateIndex
CREATE INDEX "PlanDue_throughOn_idx" ON "PlanDue"("throughOn");

-- CreateIndex
CREATE INDEX "PlanDue_inUse_dueOn_planId_lastOn_firstOn_kind_idx" ON "PlanDue"("inUse", "dueOn", "planId", "lastOn", "firstOn", "kind");

-- CreateIndex
CREATE INDEX "PlanDue_vehicleId_idx" ON "PlanDue"("vehicleId");

-- CreateIndex
CREATE INDEX "PlanDue_customerId_idx" ON "PlanDue"("customerId");

-- CreateIndex
CREATE INDEX "PlanDue_inUse_alike_dueOn_ruleOn_idx" ON "PlanDue"("inUse", "alike", "dueOn", "ruleOn");

-- CreateIndex
CREATE INDEX "PlanDue_failed_idx" ON "PlanDue"("failed");

INSERT INTO "PlanDue" ("planId", "vehicleId", "kind") SELECT "id", "vehicleId", "kind" FROM "UpkeepPlan";

CREATE TRIGGER "PlanDue_of_a_new_plan" AFTER INSERT ON "UpkeepPlan"
BEGIN
    INSERT INTO "PlanDue" ("planId", "vehicleId", "kind") VALUES (NEW."id", NEW."vehicleId", NEW."kind");
END;
CREATE TRIGGER "PlanDue_of_a_changed_plan" AFTER UPDATE ON "UpkeepPlan"
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '' WHERE "planId" = NEW."id";
END;
-- What is booked or aimed at is read beside: it moves no due day.
CREATE TRIGGER "PlanDue_after_a_line" AFTER INSERT ON "UpkeepEntry" WHEN NEW."what" NOT IN ('booked', 'aimed')
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '' WHERE "vehicleId" = NEW."vehicleId";
END;
CREATE TRIGGER "PlanDue_after_a_line_taken_back" AFTER UPDATE ON "UpkeepEntry" WHEN NEW."what" NOT IN ('booked', 'aimed')
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '' WHERE "vehicleId" = NEW."vehicleId";
END;
CREATE TRIGGER "PlanDue_after_a_line_is_gone" AFTER DELETE ON "UpkeepEntry"
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '' WHERE "vehicleId" = OLD."vehicleId";
END;
CREATE TRIGGER "PlanDue_of_a_car" AFTER UPDATE OF "archivedAt", "customerId" ON "Vehicle"
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '' WHERE "vehicleId" = NEW."id";
END;
CREATE TRIGGER "PlanDue_of_an_owner" AFTER UPDATE OF "archivedAt" ON "Customer"
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '' WHERE "customerId" = NEW."id";
END;
CREATE TRIGGER "PlanDue_in_the_shop_week" AFTER UPDATE ON "Shop"
WHEN OLD."zone" IS NOT NEW."zone" OR OLD."weekly" IS NOT NEW."weekly"
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '';
END;
CREATE TRIGGER "PlanDue_after_a_new_exception" AFTER INSERT ON "HoursException"
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '';
END;
CREATE TRIGGER "PlanDue_after_a_changed_exception" AFTER UPDATE ON "HoursException"
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '';
END;
CREATE TRIGGER "PlanDue_after_an_exception_is_gone" AFTER DELETE ON "HoursException"
BEGIN
    UPDATE "PlanDue" SET "throughOn" = '';
END;
