using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class ReadingsOfNewCoils : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "NewCoil",
                table: "Readings",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.Sql("PRAGMA user_version = 6;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "NewCoil",
                table: "Readings");
        }
    }
}
