-- AlterTable
ALTER TABLE "JobStep" ADD COLUMN "help" JSONB;

-- AlterTable
ALTER TABLE "TreatmentStep" ADD COLUMN "help" JSONB;

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_JobStepCrew" (
    "stepId" TEXT NOT NULL,
    "crewId" TEXT NOT NULL,
    "helps" BOOLEAN NOT NULL DEFAULT false,

    PRIMARY KEY ("stepId", "crewId"),
    CONSTRAINT "JobStepCrew_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "JobStep" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "JobStepCrew_crewId_fkey" FOREIGN KEY ("crewId") REFERENCES "CrewMember" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_JobStepCrew" ("crewId", "stepId") SELECT "crewId", "stepId" FROM "JobStepCrew";
DROP TABLE "JobStepCrew";
ALTER TABLE "new_JobStepCrew" RENAME TO "JobStepCrew";
CREATE INDEX "JobStepCrew_crewId_idx" ON "JobStepCrew"("crewId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
