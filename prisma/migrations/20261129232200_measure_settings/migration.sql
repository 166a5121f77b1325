-- CreateTable
CREATE TABLE "MeasureSettings" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "floorUm" REAL,
    "gaugeRepeatabilityUm" REAL,
    "glossAllowedGu" REAL,
    "glossRepeatabilityGu" REAL,
    "version" INTEGER NOT NULL DEFAULT 1
);
