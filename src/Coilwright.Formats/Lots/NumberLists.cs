using System.Globalization;
using System.Text.Json;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Lots;

/// <summary>Lists of plain numbers in a document.</summary>
internal static class NumberLists
{
    /// <summary>The numbers of a list; one that is wrong is NaN, with a problem that names its place.</summary>
    /// <param name="fields">The object that holds the list.</param>
    /// <param name="name">Its field.</param>
    /// <param name="min">Smallest allowed.</param>
    /// <param name="max">Largest allowed.</param>
    /// <param name="example">What is shown when it is missing; null when it may be.</param>
    /// <param name="longest">Most entries.</param>
    public static IReadOnlyList<double> Numbers(
        this JsonFields fields,
        string name,
        double min,
        double max,
        string? example,
        int longest
    ) => [.. fields.Items(name, (item, path) => new Boxed(One(fields, item, path, min, max)), longest, example).Select(box => box.Number)];

    /// <summary>One number of a document.</summary>
    /// <param name="fields">Takes the problem.</param>
    /// <param name="item">As it stands.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="min">Smallest allowed.</param>
    /// <param name="max">Largest allowed.</param>
    public static double One(JsonFields fields, JsonElement item, string path, double min, double max)
    {
        if (item.ValueKind == JsonValueKind.Number && item.TryGetDouble(out double number) && number >= min && number <= max)
        {
            return number;
        }

        string allowed = string.Create(CultureInfo.InvariantCulture, $"{min} to {max}");
        string why = item.ValueKind == JsonValueKind.Number ? "outside what is possible here" : "this is not a number";
        fields.Problems.Add(path, why, JsonFields.Told(item), allowed);
        return double.NaN;
    }

    private sealed record Boxed(double Number);
}
