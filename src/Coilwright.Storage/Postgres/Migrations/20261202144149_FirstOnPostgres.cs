using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Coilwright.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class FirstOnPostgres : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterDatabase()
                .Annotation("Npgsql:CollationDefinition:NOCASE", "und-u-ks-level2,und-u-ks-level2,icu,False");

            migrationBuilder.CreateTable(
                name: "AccountEvents",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Act = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    About = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Detail = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AccountEvents", x => x.EntryOrder);
                    table.UniqueConstraint("AK_AccountEvents_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Accounts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    NameKey = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Role = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    PasswordHash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    MustChange = table.Column<bool>(type: "boolean", nullable: false),
                    PinHash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Stamp = table.Column<Guid>(type: "uuid", nullable: false),
                    WrongPasswords = table.Column<int>(type: "integer", nullable: false),
                    WrongPins = table.Column<int>(type: "integer", nullable: false),
                    LockedUntilUtc = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    SinceUtc = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    LeftUtc = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Accounts", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Baskets",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Label = table.Column<string>(type: "text", nullable: false, collation: "NOCASE"),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Lot = table.Column<string>(type: "text", nullable: false, collation: "NOCASE"),
                    LeastS = table.Column<double>(type: "double precision", nullable: false),
                    LimitC = table.Column<double>(type: "double precision", nullable: false),
                    LimitOf = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Reference = table.Column<string>(type: "text", nullable: false, collation: "NOCASE"),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ErasedUtc = table.Column<string>(type: "text", nullable: true, collation: "C")
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
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Label = table.Column<string>(type: "text", nullable: false, collation: "NOCASE"),
                    Lots = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    PotLifeS = table.Column<double>(type: "double precision", nullable: false),
                    FullCureS = table.Column<double>(type: "double precision", nullable: false),
                    SheetC = table.Column<double>(type: "double precision", nullable: false),
                    DoublesPer10C = table.Column<bool>(type: "boolean", nullable: false),
                    RoomC = table.Column<double>(type: "double precision", nullable: false),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_InkMixes", x => x.EntryOrder);
                    table.UniqueConstraint("AK_InkMixes_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Learning",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Act = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Line = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Reason = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Program = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Learning", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Learning_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Machines",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Machines", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Machines_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "OpenPieces",
                columns: table => new
                {
                    PieceId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OpenPieces", x => x.PieceId);
                });

            migrationBuilder.CreateTable(
                name: "Revisions",
                columns: table => new
                {
                    RecipeId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    RecipeName = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    State = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Reason = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ReleasedBy = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Revisions", x => new { x.RecipeId, x.Number });
                });

            migrationBuilder.CreateTable(
                name: "RoomTemperatures",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    TemperatureC = table.Column<double>(type: "double precision", nullable: false),
                    Typed = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RoomTemperatures", x => x.EntryOrder);
                });

            migrationBuilder.CreateTable(
                name: "Rules",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Rules", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Rules_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SecretMarks",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    RecipeId = table.Column<Guid>(type: "uuid", nullable: false),
                    IsSecret = table.Column<bool>(type: "boolean", nullable: false),
                    Reason = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SecretMarks", x => x.EntryOrder);
                    table.UniqueConstraint("AK_SecretMarks_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Sessions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    KeyHash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    AccountId = table.Column<Guid>(type: "uuid", nullable: false),
                    Stamp = table.Column<Guid>(type: "uuid", nullable: false),
                    PinAccountId = table.Column<Guid>(type: "uuid", nullable: true),
                    PinStamp = table.Column<Guid>(type: "uuid", nullable: true),
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    BegunUtc = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    SeenUtc = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    EndedUtc = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sessions", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Shop",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    CreatedUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Shop", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Spools",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Label = table.Column<string>(type: "text", nullable: false, collation: "NOCASE"),
                    Lot = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    SupplierText = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Gauge = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Insulation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Build = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ReceivedKg = table.Column<double>(type: "double precision", nullable: true),
                    TareKg = table.Column<double>(type: "double precision", nullable: true),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Spools", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Spools_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "StepUndos",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    About = table.Column<Guid>(type: "uuid", nullable: false),
                    Reason = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StepUndos", x => x.EntryOrder);
                    table.UniqueConstraint("AK_StepUndos_Id", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Tokens",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    NameKey = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    KeyHash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Role = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    MadeUtc = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    UntilUtc = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    EndedUtc = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Tokens", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "BathReadings",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    BasketId = table.Column<Guid>(type: "uuid", nullable: false),
                    Typed = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TemperatureC = table.Column<double>(type: "double precision", nullable: false),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                name: "Batches",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    RecipeId = table.Column<Guid>(type: "uuid", nullable: false),
                    RevisionNumber = table.Column<int>(type: "integer", nullable: false),
                    CoilName = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Quantity = table.Column<int>(type: "integer", nullable: false),
                    TagPrefix = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Spool = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Machine = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    BegunUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Batches", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Batches_Revisions_RecipeId_RevisionNumber",
                        columns: x => new { x.RecipeId, x.RevisionNumber },
                        principalTable: "Revisions",
                        principalColumns: new[] { "RecipeId", "Number" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Pieces",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Serial = table.Column<string>(type: "text", nullable: false, collation: "NOCASE"),
                    RecipeId = table.Column<Guid>(type: "uuid", nullable: false),
                    RevisionNumber = table.Column<int>(type: "integer", nullable: false),
                    Options = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Overruled = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                name: "SpoolReadings",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SpoolId = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Typed = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    LengthM = table.Column<double>(type: "double precision", nullable: true),
                    Ohm = table.Column<double>(type: "double precision", nullable: true),
                    TemperatureC = table.Column<double>(type: "double precision", nullable: true),
                    GrossKg = table.Column<double>(type: "double precision", nullable: true),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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

            migrationBuilder.CreateTable(
                name: "BatchEvents",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    BatchId = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Tag = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Spool = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Undoes = table.Column<Guid>(type: "uuid", nullable: true),
                    Payload = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                name: "BatchLimits",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    BatchId = table.Column<Guid>(type: "uuid", nullable: false),
                    AtHz = table.Column<double>(type: "double precision", nullable: false),
                    Json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    RevisionNumber = table.Column<int>(type: "integer", nullable: false),
                    Program = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Calibration = table.Column<int>(type: "integer", nullable: false),
                    AtBegin = table.Column<bool>(type: "boolean", nullable: false),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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

            migrationBuilder.CreateTable(
                name: "BatchSummaries",
                columns: table => new
                {
                    BatchId = table.Column<Guid>(type: "uuid", nullable: false),
                    State = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Hold = table.Column<int>(type: "integer", nullable: false),
                    Program = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Json = table.Column<string>(type: "text", nullable: false, collation: "C")
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

            migrationBuilder.CreateTable(
                name: "Readings",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    BatchId = table.Column<Guid>(type: "uuid", nullable: false),
                    Tag = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Quantity = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Typed = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Unit = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Si = table.Column<double>(type: "double precision", nullable: true),
                    TemperatureC = table.Column<double>(type: "double precision", nullable: true),
                    AtHz = table.Column<double>(type: "double precision", nullable: true),
                    Turns = table.Column<double>(type: "double precision", nullable: true),
                    Instrument = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Flag = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Supersedes = table.Column<Guid>(type: "uuid", nullable: true),
                    Reason = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    NewCoil = table.Column<bool>(type: "boolean", nullable: true),
                    Withdraws = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Readings", x => x.EntryOrder);
                    table.UniqueConstraint("AK_Readings_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Readings_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Readings_Readings_Supersedes",
                        column: x => x.Supersedes,
                        principalTable: "Readings",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PieceEvents",
                columns: table => new
                {
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PieceId = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    BasketId = table.Column<Guid>(type: "uuid", nullable: true),
                    MixId = table.Column<Guid>(type: "uuid", nullable: true),
                    CustomerId = table.Column<Guid>(type: "uuid", nullable: true),
                    About = table.Column<Guid>(type: "uuid", nullable: true),
                    Payload = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PieceId = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Place = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    BatchId = table.Column<Guid>(type: "uuid", nullable: true),
                    Tag = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Lot = table.Column<string>(type: "text", nullable: false, collation: "NOCASE"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                    EntryOrder = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PieceId = table.Column<Guid>(type: "uuid", nullable: false),
                    EventId = table.Column<Guid>(type: "uuid", nullable: false),
                    Quantity = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Typed = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Si = table.Column<double>(type: "double precision", nullable: true),
                    TemperatureC = table.Column<double>(type: "double precision", nullable: true),
                    AtHz = table.Column<double>(type: "double precision", nullable: true),
                    Pole = table.Column<int>(type: "integer", nullable: true),
                    DistanceM = table.Column<double>(type: "double precision", nullable: true),
                    Instrument = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TimeUtc = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                name: "IX_Accounts_NameKey",
                table: "Accounts",
                column: "NameKey",
                unique: true,
                filter: "\"LeftUtc\" IS NULL");

            migrationBuilder.CreateIndex(
                name: "IX_BatchEvents_BatchId",
                table: "BatchEvents",
                column: "BatchId");

            migrationBuilder.CreateIndex(
                name: "IX_BatchEvents_Spool",
                table: "BatchEvents",
                column: "Spool",
                filter: "\"Spool\" <> ''");

            migrationBuilder.CreateIndex(
                name: "IX_BatchEvents_Undoes",
                table: "BatchEvents",
                column: "Undoes",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_BatchLimits_BatchId_AtHz",
                table: "BatchLimits",
                columns: new[] { "BatchId", "AtHz" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_BatchSummaries_State",
                table: "BatchSummaries",
                column: "State");

            migrationBuilder.CreateIndex(
                name: "IX_Batches_RecipeId_RevisionNumber",
                table: "Batches",
                columns: new[] { "RecipeId", "RevisionNumber" });

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
                name: "IX_Learning_Act_Number",
                table: "Learning",
                columns: new[] { "Act", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_BasketId",
                table: "PieceEvents",
                column: "BasketId",
                filter: "\"BasketId\" IS NOT NULL");

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_CustomerId",
                table: "PieceEvents",
                column: "CustomerId",
                filter: "\"CustomerId\" IS NOT NULL");

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_Kind_PieceId",
                table: "PieceEvents",
                columns: new[] { "Kind", "PieceId" },
                filter: "\"Kind\" = 'MadeGolden'");

            migrationBuilder.CreateIndex(
                name: "IX_PieceEvents_MixId",
                table: "PieceEvents",
                column: "MixId",
                filter: "\"MixId\" IS NOT NULL");

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

            migrationBuilder.CreateIndex(
                name: "IX_Readings_BatchId",
                table: "Readings",
                column: "BatchId");

            migrationBuilder.CreateIndex(
                name: "IX_Readings_BatchId_Quantity",
                table: "Readings",
                columns: new[] { "BatchId", "Quantity" });

            migrationBuilder.CreateIndex(
                name: "IX_Readings_Supersedes",
                table: "Readings",
                column: "Supersedes",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_SecretMarks_RecipeId",
                table: "SecretMarks",
                column: "RecipeId");

            migrationBuilder.CreateIndex(
                name: "IX_Sessions_KeyHash",
                table: "Sessions",
                column: "KeyHash",
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

            migrationBuilder.CreateIndex(
                name: "IX_StepUndos_About",
                table: "StepUndos",
                column: "About",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Tokens_KeyHash",
                table: "Tokens",
                column: "KeyHash",
                unique: true);

            foreach (string rule in GuardedTables.Rules)
            {
                migrationBuilder.Sql(rule);
            }

            migrationBuilder.Sql("CREATE TABLE \"CoilwrightSchema\" (\"Version\" integer NOT NULL);");
            migrationBuilder.Sql("INSERT INTO \"CoilwrightSchema\" (\"Version\") VALUES (11);");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "CoilwrightSchema");

            migrationBuilder.DropTable(
                name: "AccountEvents");

            migrationBuilder.DropTable(
                name: "Accounts");

            migrationBuilder.DropTable(
                name: "BatchEvents");

            migrationBuilder.DropTable(
                name: "BatchLimits");

            migrationBuilder.DropTable(
                name: "BatchSummaries");

            migrationBuilder.DropTable(
                name: "BathReadings");

            migrationBuilder.DropTable(
                name: "Learning");

            migrationBuilder.DropTable(
                name: "Machines");

            migrationBuilder.DropTable(
                name: "OpenPieces");

            migrationBuilder.DropTable(
                name: "PieceEvents");

            migrationBuilder.DropTable(
                name: "PieceParts");

            migrationBuilder.DropTable(
                name: "PieceReadings");

            migrationBuilder.DropTable(
                name: "Readings");

            migrationBuilder.DropTable(
                name: "RoomTemperatures");

            migrationBuilder.DropTable(
                name: "Rules");

            migrationBuilder.DropTable(
                name: "SecretMarks");

            migrationBuilder.DropTable(
                name: "Sessions");

            migrationBuilder.DropTable(
                name: "Shop");

            migrationBuilder.DropTable(
                name: "SpoolReadings");

            migrationBuilder.DropTable(
                name: "StepUndos");

            migrationBuilder.DropTable(
                name: "Tokens");

            migrationBuilder.DropTable(
                name: "Baskets");

            migrationBuilder.DropTable(
                name: "Customers");

            migrationBuilder.DropTable(
                name: "InkMixes");

            migrationBuilder.DropTable(
                name: "Pieces");

            migrationBuilder.DropTable(
                name: "Batches");

            migrationBuilder.DropTable(
                name: "Spools");

            migrationBuilder.DropTable(
                name: "Revisions");
        }
    }
}
