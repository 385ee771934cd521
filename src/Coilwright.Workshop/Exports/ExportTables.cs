namespace Coilwright.Workshop.Exports;

/// <summary>
/// What an export holds, file by file, in an order in which each names only records above it. What follows from records (summaries of
/// batches, the list of pieces in the shop) is left out and made again.
/// </summary>
public static partial class ExportTables
{
    /// <summary>Every table.</summary>
    public static IReadOnlyList<ExportTable> All { get; } =
    [
        Revisions(),
        Batches(),
        BatchLimits(),
        BatchEvents(),
        Readings(),
        RoomTemperatures(),
        Machines(),
        Spools(),
        SpoolReadings(),
        Customers(),
        Baskets(),
        BathReadings(),
        InkMixes(),
        Pieces(),
        PieceParts(),
        PieceEvents(),
        PieceReadings(),
        StepUndos(),
        Rules(),
        Learning(),
        SecretMarks(),
    ];

    /// <summary>Tables of a shop that follow from the others.</summary>
    public static IReadOnlyList<string> Derived { get; } = ["BatchSummaries", "OpenPieces"];

    /// <summary>
    /// Tables of a shop that stay where they are: who may sign in at this place, with what keys. A shop that is brought in elsewhere
    /// makes its own.
    /// </summary>
    public static IReadOnlyList<string> Staying { get; } = ["Accounts", "AccountEvents", "Sessions", "Tokens"];

    private static ExportTable SecretMarks() =>
        new("secret-marks.csv", "SecretMarks", "Recipes that are secret")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("recipe", "RecipeId", ExportKind.Id),
                new("isSecret", "IsSecret", ExportKind.Flag),
                new("reason", "Reason", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
        };

    private static ExportTable Learning() =>
        new("learning.csv", "Learning", "What the shop learnt from its readings")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("act", "Act", ExportKind.Word) { Words = ["Proposed", "Accepted", "Declined", "Closed"] },
                new("number", "Number", ExportKind.Count),
                new("line", "Line", ExportKind.Text),
                new("set", "Json", ExportKind.Text),
                new("reason", "Reason", ExportKind.Text),
                new("program", "Program", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"]), new(["act", "number"])],
        };

    private static ExportTable Revisions() =>
        new("revisions.csv", "Revisions", "Revisions of recipes")
        {
            Columns =
            [
                new("recipe", "RecipeId", ExportKind.Id),
                new("number", "Number", ExportKind.Count),
                new("name", "RecipeName", ExportKind.Text),
                new("state", "State", ExportKind.Word) { Words = ["Draft", "Released"] },
                new("document", "Json", ExportKind.Document),
                new("reason", "Reason", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("releasedBy", "ReleasedBy", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Order = ["RecipeId", "Number"],
            Keys = [new(["recipe", "number"])],
        };

    private static ExportTable Batches() =>
        new("batches.csv", "Batches", "Batches as they were begun")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("name", "Name", ExportKind.Text),
                new("recipe", "RecipeId", ExportKind.Id),
                new("revision", "RevisionNumber", ExportKind.Count),
                new("coil", "CoilName", ExportKind.Text),
                new("quantity", "Quantity", ExportKind.Count),
                new("tagPrefix", "TagPrefix", ExportKind.Text),
                new("spool", "Spool", ExportKind.Text),
                new("machine", "Machine", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("begun", "BegunUtc", ExportKind.Time),
            ],
            Order = ["BegunUtc", "Name", "Id"],
            Keys = [new(["id"])],
            Links = [new(["recipe", "revision"], "revisions.csv")],
        };

    private static ExportTable BatchLimits() =>
        new("batch-limits.jsonl", "BatchLimits", "What the coils of batches are judged against")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("batch", "BatchId", ExportKind.Id),
                new("at [Hz]", "AtHz", ExportKind.Number),
                new("limits", "Json", ExportKind.Json),
                new("revision", "RevisionNumber", ExportKind.Count),
                new("program", "Program", ExportKind.Text),
                new("calibration", "Calibration", ExportKind.Count),
                new("atBegin", "AtBegin", ExportKind.Flag),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"]), new(["batch", "at [Hz]"])],
            Links = [new(["batch"], "batches.csv")],
        };

    private static ExportTable BatchEvents() =>
        new("batch-events.jsonl", "BatchEvents", "Events of batches and of coils while they are wound")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("batch", "BatchId", ExportKind.Id),
                new("kind", "Kind", ExportKind.Text),
                new("tag", "Tag", ExportKind.Text),
                new("spool", "Spool", ExportKind.Text),
                new("undoes", "Undoes", ExportKind.Id, IsOptional: true),
                new("says", "Payload", ExportKind.Json),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"]), new(["undoes"])],
            Links = [new(["batch"], "batches.csv"), new(["undoes"], "batch-events.jsonl")],
        };

    private static ExportTable Readings() =>
        new("readings.csv", "Readings", "Readings of coils; a correction is a line of its own that names the one it takes the place of")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("batch", "BatchId", ExportKind.Id),
                new("tag", "Tag", ExportKind.Text),
                new("quantity", "Quantity", ExportKind.Text),
                new("typed", "Typed", ExportKind.Text),
                new("unit", "Unit", ExportKind.Text),
                new("value [SI]", "Si", ExportKind.Number, IsOptional: true),
                new("temperature [°C]", "TemperatureC", ExportKind.Number, IsOptional: true),
                new("at [Hz]", "AtHz", ExportKind.Number, IsOptional: true),
                new("turns", "Turns", ExportKind.Number, IsOptional: true),
                new("instrument", "Instrument", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
                new("flag", "Flag", ExportKind.Text),
                new("supersedes", "Supersedes", ExportKind.Id, IsOptional: true),
                new("reason", "Reason", ExportKind.Text),
                new("newCoil", "NewCoil", ExportKind.Flag, IsOptional: true),
                new("withdraws", "Withdraws", ExportKind.Flag),
            ],
            Keys = [new(["id"]), new(["supersedes"])],
            Links = [new(["batch"], "batches.csv"), new(["supersedes"], "readings.csv")],
        };

    private static ExportTable RoomTemperatures() =>
        new("room-temperatures.csv", "RoomTemperatures", "Temperatures of the winding room")
        {
            Columns =
            [
                new("temperature [°C]", "TemperatureC", ExportKind.Number),
                new("typed", "Typed", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
        };

    private static ExportTable Machines() =>
        new("machines.csv", "Machines", "Winders; of one name the last line holds")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("name", "Name", ExportKind.Text),
                new("document", "Json", ExportKind.Document),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
        };

    private static ExportTable Spools() =>
        new("spools.csv", "Spools", "Spools as they came in")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("label", "Label", ExportKind.Text),
                new("lot", "Lot", ExportKind.Text),
                new("supplier", "SupplierText", ExportKind.Text),
                new("gauge", "Gauge", ExportKind.Text),
                new("insulation", "Insulation", ExportKind.Text),
                new("build", "Build", ExportKind.Text),
                new("received [kg]", "ReceivedKg", ExportKind.Number, IsOptional: true),
                new("tare [kg]", "TareKg", ExportKind.Number, IsOptional: true),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"]), new(["label"], IgnoresCase: true)],
        };

    private static ExportTable SpoolReadings() =>
        new("spool-readings.csv", "SpoolReadings", "Readings of spools; the newest of a kind holds")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("spool", "SpoolId", ExportKind.Id),
                new("kind", "Kind", ExportKind.Word) { Words = ["Measured", "Weighed"] },
                new("typed", "Typed", ExportKind.Text),
                new("length [m]", "LengthM", ExportKind.Number, IsOptional: true),
                new("resistance [Ω]", "Ohm", ExportKind.Number, IsOptional: true),
                new("temperature [°C]", "TemperatureC", ExportKind.Number, IsOptional: true),
                new("gross [kg]", "GrossKg", ExportKind.Number, IsOptional: true),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
            Links = [new(["spool"], "spools.csv")],
        };
}
