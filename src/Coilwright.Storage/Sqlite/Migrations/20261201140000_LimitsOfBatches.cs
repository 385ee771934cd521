using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class LimitsOfBatches : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "BatchLimits",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    BatchId = table.Column<Guid>(type: "TEXT", nullable: false),
                    AtHz = table.Column<double>(type: "REAL", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false),
                    RevisionNumber = table.Column<int>(type: "INTEGER", nullable: false),
                    Program = table.Column<string>(type: "TEXT", nullable: false),
                    Calibration = table.Column<int>(type: "INTEGER", nullable: false),
                    AtBegin = table.Column<bool>(type: "INTEGER", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BatchLimits", x => x.EntryOrder);
                    table.UniqueConstraint("AK_BatchLimits_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_BatchLimits_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_BatchLimits_BatchId_AtHz",
                table: "BatchLimits",
                columns: new[] { "BatchId", "AtHz" },
                unique: true);

            foreach (string rule in RecordsOnlyGrow.LimitsRules)
            {
                migrationBuilder.Sql(rule);
            }

            migrationBuilder.Sql("PRAGMA user_version = 7;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "BatchLimits");
        }
    }
}
