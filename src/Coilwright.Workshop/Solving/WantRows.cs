using Coilwright.Analysis.Solving;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Solving;

/// <summary>Reads the rows of wants of a form.</summary>
public static class WantRows
{
    /// <summary>Most wants of one question.</summary>
    public const int Most = 8;

    /// <summary>Name of a row in problems.</summary>
    public static string Field(int row) => $"want[{row}]";

    /// <summary>What is wanted, each row that says something; problems are noted with their row.</summary>
    /// <param name="rows">The rows as typed.</param>
    /// <param name="now">Quantities of the recipe, with their values now.</param>
    /// <param name="problems">Gathers what is wrong.</param>
    public static IReadOnlyList<Objective?> Read(
        IReadOnlyList<WantRow> rows,
        IReadOnlyDictionary<string, double> now,
        ICollection<Problem> problems
    )
    {
        if (rows.All(row => row.IsBlank))
        {
            problems.Add(new Problem(Field(0), "say what is wanted: choose a quantity and how much of it"));
        }

        return [.. rows.Select((row, place) => row.IsBlank ? null : One(Field(place), row, now, problems))];
    }

    private static Objective? One(string field, WantRow row, IReadOnlyDictionary<string, double> now, ICollection<Problem> problems)
    {
        if (!now.TryGetValue(row.Quantity, out double value))
        {
            problems.Add(
                row.Quantity.Length == 0
                    ? new Problem(field, "choose the quantity that is wanted", row.Value)
                    : new Problem(field, "this recipe has no such quantity")
            );
            return null;
        }

        if (Missing(row) is { } missing)
        {
            problems.Add(new Problem(field, missing, Allowed: Allowed(row)));
            return null;
        }

        ObjectiveKind kind = row.How switch
        {
            WantHow.AtLeast => ObjectiveKind.AtLeast,
            WantHow.AtMost => ObjectiveKind.AtMost,
            _ => ObjectiveKind.Equal,
        };
        Objective? read = ObjectiveValue.Read(row.Quantity, kind, row.Wanted, value, out string why);
        if (read is null)
        {
            problems.Add(new Problem(field, why, Allowed: Allowed(row)));
        }

        return read;
    }

    private static string? Missing(WantRow row) =>
        row switch
        {
            { How: WantHow.Most or WantHow.Least } => null,
            { Value.Length: 0 } => "say how much of it is wanted",
            { How: WantHow.Between, UpTo.Length: 0 } => "say up to how much",
            _ => null,
        };

    private static string Allowed(WantRow row) => ObjectiveValue.AllowedOf(row.Quantity).Split(';')[0];
}
