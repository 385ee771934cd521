using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class WhatTheShopLearnt : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Learning",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Act = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Line = table.Column<string>(type: "TEXT", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false),
                    Program = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Learning", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Learning_Id", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Learning_Act_Number",
                table: "Learning",
                columns: new[] { "Act", "Number" },
                unique: true);

            foreach (string rule in RecordsOnlyGrow.LearningRules)
            {
                migrationBuilder.Sql(rule);
            }

            migrationBuilder.Sql("PRAGMA user_version = 10;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Learning");
        }
    }
}
