using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Batches;

/// <summary>Names on record that a batch may or may not bear.</summary>
/// <param name="Batches">Batches there are.</param>
/// <param name="Spools">Labels of the spools.</param>
/// <param name="Winders">Names of the winders.</param>
public sealed record KnownNames(IReadOnlyList<BatchRecord> Batches, IReadOnlyList<string> Spools, IReadOnlyList<string> Winders)
{
    private const int MostNear = 6;

    /// <summary>Reads them from the records.</summary>
    public static async Task<KnownNames> ReadAsync(IShopRecords records, CancellationToken cancel) =>
        new(
            await records.Batches.AllAsync(cancel).ConfigureAwait(false),
            [.. (await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false)).Select(spool => spool.Label)],
            [
                .. (await records.Machines.AllAsync(cancel).ConfigureAwait(false))
                    .Select(machine => machine.Name)
                    .Distinct(StringComparer.OrdinalIgnoreCase),
            ]
        );

    /// <summary>A spool's label as it stands on record; as typed when there is none.</summary>
    public string SpoolOf(string typed) => Of(Spools, typed);

    /// <summary>A winder's name as it stands on record; as typed when there is none.</summary>
    public string WinderOf(string typed) => Of(Winders, typed);

    /// <summary>What is wrong with a spool's label; null when it is on record, or none is named.</summary>
    public Problem? SpoolProblem(string typed) =>
        Unknown("spool", "there is no spool of this label", "take it in first, under Spools or with coilwright stock add", Spools, typed);

    /// <summary>What is wrong with a winder's name; null when it is on record, or none is named.</summary>
    public Problem? WinderProblem(string typed) =>
        Unknown(
            "machine",
            "there is no winder of this name",
            "add it first, under Winders or with coilwright machine keep",
            Winders,
            typed
        );

    private static string Of(IReadOnlyList<string> known, string typed) =>
        known.FirstOrDefault(name => NameKey.Same(name, typed)) ?? typed.Trim();

    private static Problem? Unknown(string field, string message, string how, IReadOnlyList<string> known, string typed)
    {
        if (typed.Trim().Length == 0 || known.Any(name => NameKey.Same(name, typed)))
        {
            return null;
        }

        string near = string.Join(", ", NearNames.Find(typed, known, MostNear));
        return new Problem(field, message, typed.Trim(), near.Length > 0 ? $"{near}; or {how}" : how);
    }
}
