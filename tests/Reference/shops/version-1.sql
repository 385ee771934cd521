PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE IF NOT EXISTS "__EFMigrationsLock" (
    "Id" INTEGER NOT NULL CONSTRAINT "PK___EFMigrationsLock" PRIMARY KEY,
    "Timestamp" TEXT NOT NULL
);
CREATE TABLE IF NOT EXISTS "__EFMigrationsHistory" (
    "MigrationId" TEXT NOT NULL CONSTRAINT "PK___EFMigrationsHistory" PRIMARY KEY,
    "ProductVersion" TEXT NOT NULL
);
INSERT INTO __EFMigrationsHistory VALUES('20261125125353_FirstRecords','10.0.15');
CREATE TABLE IF NOT EXISTS "Revisions" (
    "RecipeId" TEXT NOT NULL,
    "Number" INTEGER NOT NULL,
    "RecipeName" TEXT NOT NULL,
    "Json" TEXT NOT NULL,
    "State" TEXT NOT NULL,
    "Reason" TEXT NOT NULL,
    "Person" TEXT NOT NULL,
    "TimeUtc" TEXT NOT NULL,
    "ReleasedBy" TEXT NOT NULL,
    CONSTRAINT "PK_Revisions" PRIMARY KEY ("RecipeId", "Number")
);
INSERT INTO Revisions VALUES('75A5A3EF-03E7-4193-BF89-4D2A551A9A29',1,'Breakwater twin',replace('{\n  "format": "coilwright.recipe/1",\n  "name": "Breakwater twin",\n  "strings": { "count": 6, "spacing": "10 mm", "clearance": "2 mm", "scaleLength": "628 mm", "fromBridge": "38 mm" },\n  "coils": [\n    {\n      "name": "slug",\n      "bobbin": { "coreLength": "60 mm", "coreWidth": "5.6 mm", "endRadius": "2.8 mm", "windingHeight": "6.4 mm", "maxBuild": "6 mm", "material": "abs" },\n      "wire": { "gauge": "AWG 42", "insulation": "plain-enamel", "build": "single" },\n      "winding": { "turns": 5000, "direction": "counter-clockwise", "lay": "scattered", "pitch": "0.16 mm", "tension": "14 gf", "speed": "1200 rpm" },\n      "poles": [\n        { "shape": "rod", "material": "low-carbon-steel", "diameter": "4.8 mm", "length": "12.6 mm", "count": 6, "spacing": "10 mm", "top": "5 mm", "magnetised": "none" }\n      ],\n      "position": { "y": "-9.5 mm" },\n      "targets": { "dcResistance": { "nominal": "3.88 kΩ", "tolerance": "4 %" } }\n    },\n    {\n      "name": "screw",\n      "bobbin": { "coreLength": "60 mm", "coreWidth": "5.6 mm", "endRadius": "2.8 mm", "windingHeight": "6.4 mm", "maxBuild": "6 mm", "material": "abs" },\n      "wire": { "gauge": "AWG 42", "insulation": "plain-enamel", "build": "single" },\n      "winding": { "turns": 5000, "direction": "clockwise", "lay": "scattered", "pitch": "0.16 mm", "tension": "14 gf", "speed": "1200 rpm" },\n      "poles": [\n        { "shape": "screw", "material": "low-carbon-steel", "diameter": "3.2 mm", "length": "20 mm", "headDiameter": "5.2 mm", "headHeight": "1.6 mm", "count": 6, "spacing": "10 mm", "top": "5.4 mm", "magnetised": "none" }\n      ],\n      "position": { "y": "9.5 mm" },\n      "targets": { "dcResistance": { "nominal": "3.88 kΩ", "tolerance": "4 %" } }\n    }\n  ],\n  "magnets": [\n    { "shape": "bar", "material": "alnico-5", "size": ["62 mm", "12.5 mm", "3.2 mm"], "centre": ["0 mm", "0 mm", "-6 mm"], "magnetised": "y" }\n  ],\n  "metalwork": [\n    { "shape": "keeper", "material": "low-carbon-steel", "size": ["62 mm", "2.2 mm", "3.2 mm"], "centre": ["0 mm", "12.3 mm", "-6 mm"] }\n  ],\n  "connection": "series",\n  "potting": { "kind": "wax", "temperature": "60 °C", "limit": "65 °C", "time": "10 min" },\n  "targets": { "dcResistance": { "nominal": "7.76 kΩ", "tolerance": "4 %" } },\n  "tags": ["demo", "side-by-side humbucker"]\n}\n','\n',char(10)),'Released','','Joss','2026-03-02T08:00:00.0000000Z','Joss');
CREATE TABLE IF NOT EXISTS "RoomTemperatures" (
    "EntryOrder" INTEGER NOT NULL CONSTRAINT "PK_RoomTemperatures" PRIMARY KEY AUTOINCREMENT,
    "TemperatureC" REAL NOT NULL,
    "Typed" TEXT NOT NULL,
    "Person" TEXT NOT NULL,
    "TimeUtc" TEXT NOT NULL
);
INSERT INTO RoomTemperatures VALUES(1,20.0,'20 °C','Mara','2026-03-02T08:00:00.0000000Z');
CREATE TABLE IF NOT EXISTS "Shop" (
    "Id" INTEGER NOT NULL CONSTRAINT "PK_Shop" PRIMARY KEY AUTOINCREMENT,
    "Name" TEXT NOT NULL,
    "CreatedUtc" TEXT NOT NULL
);
INSERT INTO Shop VALUES(1,'Lantern Quay workshop','2026-03-02T08:00:00.0000000Z');
CREATE TABLE IF NOT EXISTS "Batches" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_Batches" PRIMARY KEY,
    "Name" TEXT NOT NULL,
    "RecipeId" TEXT NOT NULL,
    "RevisionNumber" INTEGER NOT NULL,
    "CoilName" TEXT NOT NULL,
    "Quantity" INTEGER NOT NULL,
    "TagPrefix" TEXT NOT NULL,
    "Spool" TEXT NOT NULL,
    "Machine" TEXT NOT NULL,
    "Person" TEXT NOT NULL,
    "BegunUtc" TEXT NOT NULL,
    CONSTRAINT "FK_Batches_Revisions_RecipeId_RevisionNumber" FOREIGN KEY ("RecipeId", "RevisionNumber") REFERENCES "Revisions" ("RecipeId", "Number") ON DELETE RESTRICT
);
INSERT INTO Batches VALUES('AA4C292C-10BB-4024-BF53-1F5919ED68BF','B-7','75A5A3EF-03E7-4193-BF89-4D2A551A9A29',1,'slug',12,'BS-','0117','Winder 2','Mara','2026-03-02T08:00:00.0000000Z');
INSERT INTO Batches VALUES('6515AA06-8239-4F22-8CA2-7419F1FA40B3','B-8','75A5A3EF-03E7-4193-BF89-4D2A551A9A29',1,'screw',12,'BC-','0121','Winder 2','Mara','2026-03-02T08:02:00.0000000Z');
CREATE TABLE IF NOT EXISTS "Readings" (
    "EntryOrder" INTEGER NOT NULL CONSTRAINT "PK_Readings" PRIMARY KEY AUTOINCREMENT,
    "Id" TEXT NOT NULL,
    "BatchId" TEXT NOT NULL,
    "Tag" TEXT NOT NULL,
    "Quantity" TEXT NOT NULL,
    "Typed" TEXT NOT NULL,
    "Unit" TEXT NOT NULL,
    "Si" REAL NULL,
    "TemperatureC" REAL NULL,
    "AtHz" REAL NULL,
    "Turns" REAL NULL,
    "Instrument" TEXT NOT NULL,
    "Person" TEXT NOT NULL,
    "TimeUtc" TEXT NOT NULL,
    "Flag" TEXT NOT NULL,
    "Supersedes" TEXT NULL,
    "Reason" TEXT NOT NULL,
    "Withdraws" INTEGER NOT NULL,
    CONSTRAINT "AK_Readings_Id" UNIQUE ("Id"),
    CONSTRAINT "FK_Readings_Batches_BatchId" FOREIGN KEY ("BatchId") REFERENCES "Batches" ("Id") ON DELETE RESTRICT,
    CONSTRAINT "FK_Readings_Readings_Supersedes" FOREIGN KEY ("Supersedes") REFERENCES "Readings" ("Id") ON DELETE RESTRICT
);
INSERT INTO Readings VALUES(1,'4B10D64C-97D3-4A6F-AECE-8E04E286329C','AA4C292C-10BB-4024-BF53-1F5919ED68BF','BS-001','dcResistance','3.92 k','kΩ',3920.0,20.0,NULL,NULL,'','Mara','2026-03-02T08:00:00.0000000Z','',NULL,'',0);
INSERT INTO Readings VALUES(2,'F882C0FC-87F4-4871-956F-6518773209B3','AA4C292C-10BB-4024-BF53-1F5919ED68BF','BS-002','dcResistance','3.98 k','kΩ',3980.0,20.0,NULL,NULL,'','Mara','2026-03-02T08:00:30.0000000Z','',NULL,'',0);
INSERT INTO Readings VALUES(3,'A20F7AA8-7CB9-4632-B8A4-E24117D38869','AA4C292C-10BB-4024-BF53-1F5919ED68BF','BS-003','dcResistance','4.02 k','kΩ',4020.0,20.0,NULL,NULL,'','Mara','2026-03-02T08:01:00.0000000Z','',NULL,'',0);
INSERT INTO Readings VALUES(4,'D63E41F5-19BA-4C24-8D2D-1F6F9C15F49D','AA4C292C-10BB-4024-BF53-1F5919ED68BF','BS-004','dcResistance','4.03 k','kΩ',4030.0,20.0,NULL,NULL,'','Mara','2026-03-02T08:01:30.0000000Z','',NULL,'',0);
INSERT INTO Readings VALUES(5,'2123B722-DFC1-431D-8254-A90228DACBAC','6515AA06-8239-4F22-8CA2-7419F1FA40B3','BC-001','dcResistance','3.95 k','kΩ',3950.0,20.0,NULL,NULL,'','Mara','2026-03-02T08:02:00.0000000Z','',NULL,'',0);
INSERT INTO Readings VALUES(6,'3C7B0C95-6401-415C-B54C-B2AA58C8F6B0','6515AA06-8239-4F22-8CA2-7419F1FA40B3','BC-002','dcResistance','4.01 k','kΩ',4010.0,20.0,NULL,NULL,'','Mara','2026-03-02T08:02:30.0000000Z','',NULL,'',0);
INSERT INTO Readings VALUES(7,'EECC7247-83C5-4356-97E6-1D0E5EEB6051','6515AA06-8239-4F22-8CA2-7419F1FA40B3','BC-003','dcResistance','4.00 k','kΩ',4000.0,20.0,NULL,NULL,'','Mara','2026-03-02T08:03:00.0000000Z','',NULL,'',0);
INSERT INTO Readings VALUES(8,'98475A72-CFFF-4344-AA70-D9E14107B586','6515AA06-8239-4F22-8CA2-7419F1FA40B3','BC-004','dcResistance','3.99 k','kΩ',3990.0,20.0,NULL,NULL,'','Mara','2026-03-02T08:03:30.0000000Z','',NULL,'',0);
INSERT INTO Readings VALUES(9,'4AB25C1E-E45F-4061-A5B0-D839D14A256B','AA4C292C-10BB-4024-BF53-1F5919ED68BF','BS-005','dcResistance','4.00 k','kΩ',4000.0,20.0,NULL,NULL,'','Mara','2026-03-28T11:20:00.0000000Z','',NULL,'',0);
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('RoomTemperatures',1);
INSERT INTO sqlite_sequence VALUES('Shop',1);
INSERT INTO sqlite_sequence VALUES('Readings',9);
CREATE INDEX "IX_Batches_RecipeId_RevisionNumber" ON "Batches" ("RecipeId", "RevisionNumber");
CREATE INDEX "IX_Readings_BatchId" ON "Readings" ("BatchId");
CREATE UNIQUE INDEX "IX_Readings_Supersedes" ON "Readings" ("Supersedes");
CREATE TRIGGER Readings_no_update BEFORE UPDATE ON Readings BEGIN SELECT RAISE(ABORT, 'a reading is superseded, never changed'); END;
CREATE TRIGGER Readings_no_delete BEFORE DELETE ON Readings BEGIN SELECT RAISE(ABORT, 'a reading is superseded, never changed'); END;
CREATE TRIGGER RoomTemperatures_no_update BEFORE UPDATE ON RoomTemperatures BEGIN SELECT RAISE(ABORT, 'a room temperature is entered anew, never changed'); END;
CREATE TRIGGER RoomTemperatures_no_delete BEFORE DELETE ON RoomTemperatures BEGIN SELECT RAISE(ABORT, 'a room temperature is entered anew, never changed'); END;
CREATE TRIGGER Batches_no_update BEFORE UPDATE ON Batches BEGIN SELECT RAISE(ABORT, 'a batch stays as it was begun'); END;
CREATE TRIGGER Batches_no_delete BEFORE DELETE ON Batches BEGIN SELECT RAISE(ABORT, 'a batch stays as it was begun'); END;
CREATE TRIGGER Revisions_no_update BEFORE UPDATE ON Revisions WHEN OLD.State = 'Released' BEGIN SELECT RAISE(ABORT, 'a released revision never changes'); END;
CREATE TRIGGER Revisions_no_delete BEFORE DELETE ON Revisions WHEN OLD.State = 'Released' BEGIN SELECT RAISE(ABORT, 'a released revision never changes'); END;
COMMIT;
PRAGMA application_id = 1131370354;
PRAGMA user_version = 1;
