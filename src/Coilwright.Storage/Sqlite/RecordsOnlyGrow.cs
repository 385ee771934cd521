namespace Coilwright.Storage.Sqlite;

/// <summary>Rules kept by the database itself, whoever writes: what was read, begun or released stays as it was.</summary>
internal static class RecordsOnlyGrow
{
    /// <summary>Triggers of the first migration. Never edit one: a later migration drops it and makes the next.</summary>
    public static readonly IReadOnlyList<string> Rules =
    [
        .. Frozen("Readings", "", "a reading is superseded, never changed"),
        .. Frozen("RoomTemperatures", "", "a room temperature is entered anew, never changed"),
        .. Frozen("Batches", "", "a batch stays as it was begun"),
        .. Frozen("Revisions", "WHEN OLD.State = 'Released' ", "a released revision never changes"),
    ];

    /// <summary>Triggers of the migration that brought machines, spools and events of batches.</summary>
    public static readonly IReadOnlyList<string> WindingRoomRules =
    [
        .. Frozen("Machines", "", "a machine is entered anew, never changed"),
        .. Frozen("Spools", "", "a spool stays as it came in"),
        .. Frozen("SpoolReadings", "", "a spool is read anew, never changed"),
        .. Frozen("BatchEvents", "", "an event is undone by another, never changed"),
    ];

    /// <summary>
    /// Triggers of the migration that brought pieces. A customer's name may be erased, and nothing else of it may change.
    /// </summary>
    public static readonly IReadOnlyList<string> PieceRules =
    [
        .. Frozen("Pieces", "", "a piece stays as it was put together"),
        .. Frozen("PieceParts", "", "a part taken out is named by an event, never changed"),
        .. Frozen("PieceEvents", "", "an event is undone by another, never changed"),
        .. Frozen("PieceReadings", "", "a piece is read anew, never changed"),
        .. Frozen("Baskets", "", "a basket stays as it went in"),
        .. Frozen("BathReadings", "", "a bath is read anew, never changed"),
        .. Frozen("InkMixes", "", "a mix stays as it was made"),
        .. Frozen("Rules", "", "rules are entered anew, never changed"),
        "CREATE TRIGGER Customers_only_erased BEFORE UPDATE ON Customers WHEN NEW.Name <> '' OR NEW.Reference <> OLD.Reference OR "
            + "NEW.Id <> OLD.Id OR NEW.TimeUtc <> OLD.TimeUtc OR OLD.ErasedUtc IS NOT NULL BEGIN SELECT RAISE(ABORT, 'of a customer "
            + "only the name may be erased'); END;",
        "CREATE TRIGGER Customers_no_delete BEFORE DELETE ON Customers BEGIN SELECT RAISE(ABORT, 'of a customer only the "
            + "name may be erased'); END;",
    ];

    /// <summary>Triggers of the migration that brought the taking back of mixes and readings of a bath.</summary>
    public static readonly IReadOnlyList<string> StepUndoRules =
    [
        .. Frozen("StepUndos", "", "what was taken back is entered anew, never changed"),
    ];

    /// <summary>Triggers that the migration to typed events takes away for its own time, and makes anew.</summary>
    public static readonly IReadOnlyList<string> TypedEventRules =
    [
        .. Frozen("BatchEvents", "", "an event is undone by another, never changed"),
        .. Frozen("PieceEvents", "", "an event is undone by another, never changed"),
        .. Frozen("PieceReadings", "", "a piece is read anew, never changed"),
    ];

    /// <summary>Triggers of the migration that brought the limits kept with a batch.</summary>
    public static readonly IReadOnlyList<string> LimitsRules =
    [
        .. Frozen("BatchLimits", "", "the limits of a batch stay as they were when it began"),
    ];

    /// <summary>Triggers of the migration that brought what the shop learns.</summary>
    public static readonly IReadOnlyList<string> LearningRules =
    [
        .. Frozen("Learning", "", "what was learnt is followed by another set, never changed"),
    ];

    /// <summary>Triggers of the migration that brought people who sign in, and secret recipes.</summary>
    public static readonly IReadOnlyList<string> PeopleRules =
    [
        .. Frozen("AccountEvents", "", "what was done with an account stays on record"),
        .. Frozen("SecretMarks", "", "a recipe is marked anew, never changed"),
    ];

    private static IEnumerable<string> Frozen(string table, string when, string why) =>
        from act in (string[])["UPDATE", "DELETE"]
        select $"CREATE TRIGGER {table}_no_{act.ToLowerInvariant()} BEFORE {act} ON {table} {when}BEGIN SELECT RAISE(ABORT, '{why}'); END;";
}
