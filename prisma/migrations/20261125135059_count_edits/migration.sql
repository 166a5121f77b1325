-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_BayClosure" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "bayId" TEXT NOT NULL,
    "fromAt" INTEGER NOT NULL,
    "toAt" INTEGER NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "BayClosure_bayId_fkey" FOREIGN KEY ("bayId") REFERENCES "Bay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_BayClosure" ("bayId", "fromAt", "id", "reason", "toAt") SELECT "bayId", "fromAt", "id", "reason", "toAt" FROM "BayClosure";
DROP TABLE "BayClosure";
ALTER TABLE "new_BayClosure" RENAME TO "BayClosure";
CREATE INDEX "BayClosure_bayId_fromAt_idx" ON "BayClosure"("bayId", "fromAt");
CREATE TABLE "new_CrewAbsence" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "crewId" TEXT NOT NULL,
    "fromAt" INTEGER NOT NULL,
    "toAt" INTEGER NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "CrewAbsence_crewId_fkey" FOREIGN KEY ("crewId") REFERENCES "CrewMember" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_CrewAbsence" ("crewId", "fromAt", "id", "reason", "toAt") SELECT "crewId", "fromAt", "id", "reason", "toAt" FROM "CrewAbsence";
DROP TABLE "CrewAbsence";
ALTER TABLE "new_CrewAbsence" RENAME TO "CrewAbsence";
CREATE INDEX "CrewAbsence_crewId_fromAt_idx" ON "CrewAbsence"("crewId", "fromAt");
CREATE TABLE "new_HoursException" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "date" TEXT NOT NULL,
    "hours" JSONB NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1
);
INSERT INTO "new_HoursException" ("date", "hours", "id", "note") SELECT "date", "hours", "id", "note" FROM "HoursException";
DROP TABLE "HoursException";
ALTER TABLE "new_HoursException" RENAME TO "HoursException";
CREATE UNIQUE INDEX "HoursException_date_key" ON "HoursException"("date");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
