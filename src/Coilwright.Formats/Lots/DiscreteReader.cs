using System.Globalization;
using System.Text.Json;
using Coilwright.Analysis.Lots;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Lots;

/// <summary>
/// Reads amounts with their probabilities: pairs [[10, 0.5], [20, 0.5]], two lists [[10, 20, 30], [0.2, 0.3, 0.5]], an object
/// { "10": 0.5, "20": 0.5 }, or a list of the probabilities of 0, 1, 2 …
/// </summary>
internal static class DiscreteReader
{
    private const string Example = "[[10, 0.5], [20, 0.5]]";
    private const double Rounding = 1e-6;

    public static NeedDistribution Read(JsonFields fields, JsonElement value, int longest)
    {
        (string path, int before) = (fields.PathOf("discrete"), fields.Problems.All.Count);
        List<(double Amount, double Probability)> outcomes = Outcomes(fields, value, path);
        if (fields.Problems.All.Count == before)
        {
            Check(fields, path, outcomes, longest);
        }

        return new DiscreteNeed([
            .. outcomes.GroupBy(one => one.Amount).OrderBy(one => one.Key).Select(one => (one.Key, one.Sum(two => two.Probability))),
        ]);
    }

    private static List<(double Amount, double Probability)> Outcomes(JsonFields fields, JsonElement value, string path)
    {
        if (value.ValueKind == JsonValueKind.Object)
        {
            return
            [
                .. value.EnumerateObject().Select(one => (Amount(fields, one.Name, path), Part(fields, one.Value, $"{path}.{one.Name}"))),
            ];
        }

        if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() == 0)
        {
            fields.Problems.Add(path, "a list of amounts with their probabilities is needed here", JsonFields.Told(value), Example);
            return [];
        }

        JsonElement[] entries = [.. value.EnumerateArray()];
        if (entries.All(entry => entry.ValueKind == JsonValueKind.Number))
        {
            return [.. entries.Select((entry, at) => ((double)at, Part(fields, entry, At(path, at))))];
        }

        return IsTwoLists(entries)
            ? [.. entries[0].EnumerateArray().Zip(entries[1].EnumerateArray(), (amount, part) => Both(fields, amount, part, path))]
            : [.. entries.Select((entry, at) => Pair(fields, entry, At(path, at)))];
    }

    /// <summary>
    /// Amounts in one list and as many probabilities in another; two pairs are told by what their second numbers add up to.
    /// </summary>
    private static bool IsTwoLists(JsonElement[] entries)
    {
        if (entries.Length != 2 || entries.Any(entry => entry.ValueKind != JsonValueKind.Array))
        {
            return false;
        }

        int length = entries[0].GetArrayLength();
        return length == entries[1].GetArrayLength()
            && (length != 2 || (!MakeOne(entries[0][1], entries[1][1]) && MakeOne(entries[1][0], entries[1][1])));
    }

    private static bool MakeOne(JsonElement one, JsonElement other) =>
        one.ValueKind == JsonValueKind.Number
        && other.ValueKind == JsonValueKind.Number
        && Math.Abs(one.GetDouble() + other.GetDouble() - 1) < Rounding;

    private static (double Amount, double Probability) Pair(JsonFields fields, JsonElement entry, string path)
    {
        if (entry.ValueKind == JsonValueKind.Array && entry.GetArrayLength() == 2)
        {
            return Both(fields, entry[0], entry[1], path);
        }

        fields.Problems.Add(path, "an amount and its probability are needed here", JsonFields.Told(entry), "[10, 0.5]");
        return (0, 0);
    }

    private static (double Amount, double Probability) Both(JsonFields fields, JsonElement amount, JsonElement part, string path) =>
        (NumberLists.One(fields, amount, path, 0, DemandReader.Most), Part(fields, part, path));

    private static double Part(JsonFields fields, JsonElement part, string path) => NumberLists.One(fields, part, path, 0, 1);

    private static double Amount(JsonFields fields, string name, string path)
    {
        if (CountParser.TryNumber(name, out double amount) && amount >= 0 && amount <= DemandReader.Most)
        {
            return amount;
        }

        fields.Problems.Add(path, "the name of each probability is its amount", $"\"{name}\"", "0 to 1000000000");
        return 0;
    }

    private static void Check(JsonFields fields, string path, List<(double Amount, double Probability)> outcomes, int longest)
    {
        double sum = outcomes.Sum(one => one.Probability);
        if (Math.Abs(sum - 1) > Rounding)
        {
            fields.Problems.Add(path, "the probabilities must add up to 1", sum.ToString("0.######", CultureInfo.InvariantCulture), "1");
        }

        if (outcomes.Count > longest)
        {
            fields.Problems.Add(path, "there are too many amounts", null, string.Create(CultureInfo.InvariantCulture, $"1 to {longest}"));
        }
    }

    private static string At(string path, int at) => string.Create(CultureInfo.InvariantCulture, $"{path}[{at}]");
}
