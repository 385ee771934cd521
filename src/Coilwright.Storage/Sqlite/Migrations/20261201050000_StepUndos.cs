using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class StepUndos : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "StepUndos",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    About = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StepUndos", x => x.EntryOrder);
                    table.UniqueConstraint("AK_StepUndos_Id", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_StepUndos_About",
                table: "StepUndos",
                column: "About",
                unique: true);

            foreach (string rule in RecordsOnlyGrow.StepUndoRules)
            {
                migrationBuilder.Sql(rule);
            }

            migrationBuilder.Sql("PRAGMA user_version = 5;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "StepUndos");
        }
    }
}
