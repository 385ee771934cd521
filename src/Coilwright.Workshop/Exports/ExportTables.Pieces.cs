namespace Coilwright.Workshop.Exports;

/// <summary>What an export holds: customers, steps, pieces and rules.</summary>
public static partial class ExportTables
{
    private static ExportTable Customers() =>
        new("customers.csv", "Customers", "Customers")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("reference", "Reference", ExportKind.Text),
                new("name", "Name", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
                new("erased", "ErasedUtc", ExportKind.Time, IsOptional: true),
            ],
            Keys = [new(["id"]), new(["reference"], IgnoresCase: true)],
        };

    private static ExportTable Baskets() =>
        new("baskets.csv", "Baskets", "Potting baskets as they went in")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("label", "Label", ExportKind.Text),
                new("kind", "Kind", ExportKind.Text),
                new("lot", "Lot", ExportKind.Text),
                new("least [s]", "LeastS", ExportKind.Number),
                new("limit [°C]", "LimitC", ExportKind.Number),
                new("limitOf", "LimitOf", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
        };

    private static ExportTable BathReadings() =>
        new("bath-readings.csv", "BathReadings", "Readings of baths")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("basket", "BasketId", ExportKind.Id),
                new("typed", "Typed", ExportKind.Text),
                new("temperature [°C]", "TemperatureC", ExportKind.Number),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
            Links = [new(["basket"], "baskets.csv")],
        };

    private static ExportTable InkMixes() =>
        new("ink-mixes.csv", "InkMixes", "Mixes of ink")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("label", "Label", ExportKind.Text),
                new("lots", "Lots", ExportKind.Text),
                new("potLife [s]", "PotLifeS", ExportKind.Number),
                new("fullCure [s]", "FullCureS", ExportKind.Number),
                new("sheet [°C]", "SheetC", ExportKind.Number),
                new("doublesPer10C", "DoublesPer10C", ExportKind.Flag),
                new("room [°C]", "RoomC", ExportKind.Number),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"]), new(["label"], IgnoresCase: true)],
        };

    private static ExportTable Pieces() =>
        new("pieces.csv", "Pieces", "Pieces as they were put together")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("serial", "Serial", ExportKind.Text),
                new("recipe", "RecipeId", ExportKind.Id),
                new("revision", "RevisionNumber", ExportKind.Count),
                new("options", "Options", ExportKind.Text),
                new("overruled", "Overruled", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"]), new(["serial"], IgnoresCase: true)],
            Links = [new(["recipe", "revision"], "revisions.csv")],
        };

    private static ExportTable PieceParts() =>
        new("piece-parts.csv", "PieceParts", "Parts of pieces; one that was taken out is named by an event")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("piece", "PieceId", ExportKind.Id),
                new("kind", "Kind", ExportKind.Word) { Words = ["Coil", "Magnets", "Other"] },
                new("place", "Place", ExportKind.Text),
                new("batch", "BatchId", ExportKind.Id, IsOptional: true),
                new("tag", "Tag", ExportKind.Text),
                new("lot", "Lot", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
            Links = [new(["piece"], "pieces.csv"), new(["batch"], "batches.csv")],
        };

    private static ExportTable PieceEvents() =>
        new("piece-events.jsonl", "PieceEvents", "Events of pieces")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("piece", "PieceId", ExportKind.Id),
                new("kind", "Kind", ExportKind.Text),
                new("basket", "BasketId", ExportKind.Id, IsOptional: true),
                new("mix", "MixId", ExportKind.Id, IsOptional: true),
                new("customer", "CustomerId", ExportKind.Id, IsOptional: true),
                new("about", "About", ExportKind.Id, IsOptional: true),
                new("says", "Payload", ExportKind.Json),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
            Links =
            [
                new(["piece"], "pieces.csv"),
                new(["basket"], "baskets.csv"),
                new(["mix"], "ink-mixes.csv"),
                new(["customer"], "customers.csv"),
            ],
        };

    private static ExportTable PieceReadings() =>
        new("piece-readings.csv", "PieceReadings", "Readings of pieces")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("piece", "PieceId", ExportKind.Id),
                new("event", "EventId", ExportKind.Id),
                new("quantity", "Quantity", ExportKind.Text),
                new("typed", "Typed", ExportKind.Text),
                new("value [SI]", "Si", ExportKind.Number, IsOptional: true),
                new("temperature [°C]", "TemperatureC", ExportKind.Number, IsOptional: true),
                new("at [Hz]", "AtHz", ExportKind.Number, IsOptional: true),
                new("pole", "Pole", ExportKind.Count, IsOptional: true),
                new("distance [m]", "DistanceM", ExportKind.Number, IsOptional: true),
                new("instrument", "Instrument", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
            Links = [new(["piece"], "pieces.csv")],
        };

    private static ExportTable StepUndos() =>
        new("step-undos.csv", "StepUndos", "Mixes of ink and readings of baths that were taken back")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("about", "About", ExportKind.Id),
                new("reason", "Reason", ExportKind.Text),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"]), new(["about"])],
        };

    private static ExportTable Rules() =>
        new("rules.csv", "Rules", "The shop's rules; the last line holds")
        {
            Columns =
            [
                new("id", "Id", ExportKind.Id),
                new("document", "Json", ExportKind.Document),
                new("person", "Person", ExportKind.Text),
                new("time", "TimeUtc", ExportKind.Time),
            ],
            Keys = [new(["id"])],
        };
}
