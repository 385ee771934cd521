using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class SummariesOfBatches : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "BatchSummaries",
                columns: table => new
                {
                    BatchId = table.Column<Guid>(type: "TEXT", nullable: false),
                    State = table.Column<string>(type: "TEXT", nullable: false),
                    Hold = table.Column<int>(type: "INTEGER", nullable: false),
                    Program = table.Column<string>(type: "TEXT", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BatchSummaries", x => x.BatchId);
                    table.ForeignKey(
                        name: "FK_BatchSummaries_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_BatchSummaries_State",
                table: "BatchSummaries",
                column: "State");

            migrationBuilder.Sql("PRAGMA user_version = 9;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "BatchSummaries");
        }
    }
}
