using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class MachinesSpoolsAndBatchEvents : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "BatchEvents",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    BatchId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Tag = table.Column<string>(type: "TEXT", nullable: false),
                    Counter = table.Column<double>(type: "REAL", nullable: true),
                    Turns = table.Column<double>(type: "REAL", nullable: true),
                    Spool = table.Column<string>(type: "TEXT", nullable: false),
                    Choice = table.Column<string>(type: "TEXT", nullable: false),
                    Machine = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Note = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false),
                    Undoes = table.Column<Guid>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BatchEvents", x => x.EntryOrder);
                    table.UniqueConstraint("AK_BatchEvents_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_BatchEvents_BatchEvents_Undoes",
                        column: x => x.Undoes,
                        principalTable: "BatchEvents",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_BatchEvents_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Machines",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Machines", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Machines_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Spools",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Label = table.Column<string>(type: "TEXT", nullable: false, collation: "NOCASE"),
                    Lot = table.Column<string>(type: "TEXT", nullable: false),
                    SupplierText = table.Column<string>(type: "TEXT", nullable: false),
                    Gauge = table.Column<string>(type: "TEXT", nullable: false),
                    Insulation = table.Column<string>(type: "TEXT", nullable: false),
                    Build = table.Column<string>(type: "TEXT", nullable: false),
                    ReceivedKg = table.Column<double>(type: "REAL", nullable: true),
                    TareKg = table.Column<double>(type: "REAL", nullable: true),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Spools", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Spools_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SpoolReadings",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SpoolId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Typed = table.Column<string>(type: "TEXT", nullable: false),
                    LengthM = table.Column<double>(type: "REAL", nullable: true),
                    Ohm = table.Column<double>(type: "REAL", nullable: true),
                    TemperatureC = table.Column<double>(type: "REAL", nullable: true),
                    GrossKg = table.Column<double>(type: "REAL", nullable: true),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SpoolReadings", x => x.EntryOrder);
                    table.UniqueConstraint("AK_SpoolReadings_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SpoolReadings_Spools_SpoolId",
                        column: x => x.SpoolId,
                        principalTable: "Spools",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_BatchEvents_BatchId",
                table: "BatchEvents",
                column: "BatchId");

            migrationBuilder.CreateIndex(
                name: "IX_BatchEvents_Undoes",
                table: "BatchEvents",
                column: "Undoes",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_SpoolReadings_SpoolId",
                table: "SpoolReadings",
                column: "SpoolId");

            migrationBuilder.CreateIndex(
                name: "IX_Spools_Label",
                table: "Spools",
                column: "Label",
                unique: true);

            foreach (string rule in RecordsOnlyGrow.WindingRoomRules)
            {
                migrationBuilder.Sql(rule);
            }

            migrationBuilder.Sql("PRAGMA user_version = 2;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "BatchEvents");

            migrationBuilder.DropTable(
                name: "Machines");

            migrationBuilder.DropTable(
                name: "SpoolReadings");

            migrationBuilder.DropTable(
                name: "Spools");
        }
    }
}
