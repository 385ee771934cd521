namespace Coilwright.Storage.Postgres;

/// <summary>Rules kept by the database itself, whoever writes: the same as those of a file.</summary>
internal static class GuardedTables
{
    private const string Erased = "of a customer only the name may be erased";

    /// <summary>Guards of the first migration. Never edit one: a later migration drops it and makes the next.</summary>
    public static readonly IReadOnlyList<string> Rules =
    [
        "CREATE FUNCTION coilwright_refuse() RETURNS trigger LANGUAGE plpgsql AS $guard$ BEGIN RAISE EXCEPTION '%', TG_ARGV[0] "
            + "USING ERRCODE = 'integrity_constraint_violation'; END; $guard$;",
        .. Frozen("Readings", "", "a reading is superseded, never changed"),
        .. Frozen("RoomTemperatures", "", "a room temperature is entered anew, never changed"),
        .. Frozen("Batches", "", "a batch stays as it was begun"),
        .. Frozen("Revisions", "WHEN (OLD.\"State\" = 'Released') ", "a released revision never changes"),
        .. Frozen("Machines", "", "a machine is entered anew, never changed"),
        .. Frozen("Spools", "", "a spool stays as it came in"),
        .. Frozen("SpoolReadings", "", "a spool is read anew, never changed"),
        .. Frozen("BatchEvents", "", "an event is undone by another, never changed"),
        .. Frozen("Pieces", "", "a piece stays as it was put together"),
        .. Frozen("PieceParts", "", "a part taken out is named by an event, never changed"),
        .. Frozen("PieceEvents", "", "an event is undone by another, never changed"),
        .. Frozen("PieceReadings", "", "a piece is read anew, never changed"),
        .. Frozen("Baskets", "", "a basket stays as it went in"),
        .. Frozen("BathReadings", "", "a bath is read anew, never changed"),
        .. Frozen("InkMixes", "", "a mix stays as it was made"),
        .. Frozen("Rules", "", "rules are entered anew, never changed"),
        .. Frozen("StepUndos", "", "what was taken back is entered anew, never changed"),
        .. Frozen("BatchLimits", "", "the limits of a batch stay as they were when it began"),
        .. Frozen("Learning", "", "what was learnt is followed by another set, never changed"),
        .. Frozen("AccountEvents", "", "what was done with an account stays on record"),
        .. Frozen("SecretMarks", "", "a recipe is marked anew, never changed"),
        Guard(
            "Customers_only_erased",
            "UPDATE",
            "Customers",
            "WHEN (NEW.\"Name\" <> '' OR NEW.\"Reference\" COLLATE \"C\" <> OLD.\"Reference\" OR NEW.\"Id\" <> OLD.\"Id\" "
                + "OR NEW.\"TimeUtc\" <> OLD.\"TimeUtc\" OR OLD.\"ErasedUtc\" IS NOT NULL) ",
            Erased
        ),
        Guard("Customers_no_delete", "DELETE", "Customers", "", Erased),
        Emptied("Customers", Erased),
    ];

    /// <summary>Names of all guards.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [.. Rules.Where(rule => rule.StartsWith("CREATE TRIGGER", StringComparison.Ordinal)).Select(rule => rule.Split('"')[1])];

    private static IEnumerable<string> Frozen(string table, string when, string why) =>
        [
            Guard(table + "_no_update", "UPDATE", table, when, why),
            Guard(table + "_no_delete", "DELETE", table, when, why),
            Emptied(table, why),
        ];

    private static string Guard(string name, string act, string table, string when, string why) =>
        $"CREATE TRIGGER \"{name}\" BEFORE {act} ON \"{table}\" FOR EACH ROW {when}EXECUTE FUNCTION coilwright_refuse('{why}');";

    /// <summary>A table is emptied past the guards of its rows; a file has no such act.</summary>
    private static string Emptied(string table, string why) =>
        $"CREATE TRIGGER \"{table}_no_truncate\" BEFORE TRUNCATE ON \"{table}\" FOR EACH STATEMENT EXECUTE FUNCTION "
        + $"coilwright_refuse('{why}');";
}
