using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class PiecesStepsAndCustomers : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Baskets",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Label = table.Column<string>(type: "TEXT", nullable: false, collation: "NOCASE"),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Lot = table.Column<string>(type: "TEXT", nullable: false, collation: "NOCASE"),
                    LeastS = table.Column<double>(type: "REAL", nullable: false),
                    LimitC = table.Column<double>(type: "REAL", nullable: false),
                    LimitOf = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Baskets", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Baskets_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Customers",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reference = table.Column<string>(type: "TEXT", nullable: false, collation: "NOCASE"),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false),
                    ErasedUtc = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Customers", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Customers_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "InkMixes",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Label = table.Column<string>(type: "TEXT", nullable: false, collation: "NOCASE"),
                    Lots = table.Column<string>(type: "TEXT", nullable: false),
                    PotLifeS = table.Column<double>(type: "REAL", nullable: false),
                    FullCureS = table.Column<double>(type: "REAL", nullable: false),
                    SheetC = table.Column<double>(type: "REAL", nullable: false),
                    DoublesPer10C = table.Column<bool>(type: "INTEGER", nullable: false),
                    RoomC = table.Column<double>(type: "REAL", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_InkMixes", x => x.EntryOrder);
                    table.UniqueConstraint("AK_InkMixes_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "OpenPieces",
                columns: table => new
                {
                    PieceId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OpenPieces", x => x.PieceId);
                });

            migrationBuilder.CreateTable(
                name: "Pieces",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Serial = table.Column<string>(type: "TEXT", nullable: false, collation: "NOCASE"),
                    RecipeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    RevisionNumber = table.Column<int>(type: "INTEGER", nullable: false),
                    Options = table.Column<string>(type: "TEXT", nullable: false),
                    Overruled = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Pieces", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Pieces_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Pieces_Revisions_RecipeId_RevisionNumber",
                        columns: x => new { x.RecipeId, x.RevisionNumber },
                        principalTable: "Revisions",
                        principalColumns: new[] { "RecipeId", "Number" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Rules",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Rules", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Rules_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "BathReadings",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    BasketId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Typed = table.Column<string>(type: "TEXT", nullable: false),
                    TemperatureC = table.Column<double>(type: "REAL", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BathReadings", x => x.EntryOrder);
                    table.UniqueConstraint("AK_BathReadings_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_BathReadings_Baskets_BasketId",
                        column: x => x.BasketId,
                        principalTable: "Baskets",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PieceEvents",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PieceId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Step = table.Column<string>(type: "TEXT", nullable: false),
                    BasketId = table.Column<Guid>(type: "TEXT", nullable: true),
                    MixId = table.Column<Guid>(type: "TEXT", nullable: true),
                    CustomerId = table.Column<Guid>(type: "TEXT", nullable: true),
                    About = table.Column<Guid>(type: "TEXT", nullable: true),
                    Passed = table.Column<bool>(type: "INTEGER", nullable: true),
                    Words = table.Column<string>(type: "TEXT", nullable: false),
                    Cost = table.Column<string>(type: "TEXT", nullable: false),
                    Answer = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PieceEvents", x => x.EntryOrder);
                    table.UniqueConstraint("AK_PieceEvents_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PieceEvents_Baskets_BasketId",
                        column: x => x.BasketId,
                        principalTable: "Baskets",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_PieceEvents_Customers_CustomerId",
                        column: x => x.CustomerId,
                        principalTable: "Customers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_PieceEvents_InkMixes_MixId",
                        column: x => x.MixId,
                        principalTable: "InkMixes",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_PieceEvents_Pieces_PieceId",
                        column: x => x.PieceId,
                        principalTable: "Pieces",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PieceParts",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PieceId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Place = table.Column<string>(type: "TEXT", nullable: false),
                    BatchId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Tag = table.Column<string>(type: "TEXT", nullable: false),
                    Lot = table.Column<string>(type: "TEXT", nullable: false, collation: "NOCASE"),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PieceParts", x => x.EntryOrder);
                    table.UniqueConstraint("AK_PieceParts_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PieceParts_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_PieceParts_Pieces_PieceId",
                        column: x => x.PieceId,
                        principalTable: "Pieces",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PieceReadings",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PieceId = table.Column<Guid>(type: "TEXT", nullable: false),
                    EventId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Quantity = table.Column<string>(type: "TEXT", nullable: false),
                    Typed = table.Column<string>(type: "TEXT", nullable: false),
                    Si = table.Column<double>(type: "REAL", nullable: true),
                    TemperatureC = table.Column<double>(type: "REAL", nullable: true),
                    AtHz = table.Column<double>(type: "REAL", nullable: true),
                    Pole = table.Column<int>(type: "INTEGER", nullable: true),
                    DistanceM = table.Column<double>(type: "REAL", nullable: true),
                    Instrument = table.Column<string>(type: "TEXT", nullable: false),
                    TimeUtc = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PieceReadings", x => x.EntryOrder);
                    table.UniqueConstraint("AK_PieceReadings_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PieceReadings_Pieces_PieceId",
                        column: x => x.PieceId,
                        principalTable: "Pieces",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_BatchEvents_Spool",
                table: "BatchEvents",
                column: "Spool",
                filter: "Spool <> ''");

            migrationBuilder.CreateIndex(
                name: "IX_BathReadings_BasketId",
                table: "BathReadings",
                column: "BasketId");

            migrationBuilder.CreateIndex(
                name: "IX_Customers_Reference",
                table: "Customers",
                column: "Reference",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_InkMixes_Label",
                table: "InkMixes",
                column: "Label",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_BasketId",
                table: "PieceEvents",
                column: "BasketId",
                filter: "BasketId IS NOT NULL");

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_CustomerId",
                table: "PieceEvents",
                column: "CustomerId",
                filter: "CustomerId IS NOT NULL");

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_Kind_PieceId",
                table: "PieceEvents",
                columns: new[] { "Kind", "PieceId" },
                filter: "Kind = 'MadeGolden'");

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_MixId",
                table: "PieceEvents",
                column: "MixId",
                filter: "MixId IS NOT NULL");

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_PieceId",
                table: "PieceEvents",
                column: "PieceId");

            migrationBuilder.CreateIndex(
                name: "IX_PieceParts_BatchId_Tag",
                table: "PieceParts",
                columns: new[] { "BatchId", "Tag" });

            migrationBuilder.CreateIndex(
                name: "IX_PieceParts_Lot",
                table: "PieceParts",
                column: "Lot");

            migrationBuilder.CreateIndex(
                name: "IX_PieceParts_PieceId",
                table: "PieceParts",
                column: "PieceId");

            migrationBuilder.CreateIndex(
                name: "IX_PieceReadings_PieceId",
                table: "PieceReadings",
                column: "PieceId");

            migrationBuilder.CreateIndex(
                name: "IX_Pieces_RecipeId_RevisionNumber",
                table: "Pieces",
                columns: new[] { "RecipeId", "RevisionNumber" });

            migrationBuilder.CreateIndex(
                name: "IX_Pieces_Serial",
                table: "Pieces",
                column: "Serial",
                unique: true);

            foreach (string rule in RecordsOnlyGrow.PieceRules)
            {
                migrationBuilder.Sql(rule);
            }

            migrationBuilder.Sql("PRAGMA user_version = 3;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "BathReadings");

            migrationBuilder.DropTable(
                name: "OpenPieces");

            migrationBuilder.DropTable(
                name: "PieceEvents");

            migrationBuilder.DropTable(
                name: "PieceParts");

            migrationBuilder.DropTable(
                name: "PieceReadings");

            migrationBuilder.DropTable(
                name: "Rules");

            migrationBuilder.DropTable(
                name: "Baskets");

            migrationBuilder.DropTable(
                name: "Customers");

            migrationBuilder.DropTable(
                name: "InkMixes");

            migrationBuilder.DropTable(
                name: "Pieces");

            migrationBuilder.DropIndex(
                name: "IX_BatchEvents_Spool",
                table: "BatchEvents");
        }
    }
}
