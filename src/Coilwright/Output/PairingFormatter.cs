using System.Globalization;
using Coilwright.Analysis.Pairing;
using Coilwright.Analysis.Quantities;
using Coilwright.Formats.Tables;
using Coilwright.Workshop.Entry;

namespace Coilwright.Output;

/// <summary>Writes a pairing for people.</summary>
internal static class PairingFormatter
{
    public static void Write(TextWriter writer, IReadOnlyList<CoilRow> coils, IReadOnlyList<string> by, PairingAnswer answer)
    {
        string[] carried = [.. coils.SelectMany(coil => coil.Carried.Keys).Distinct()];
        bool turns = answer.Pairs.Any(pair => HasTurns(coils[pair.A]) && HasTurns(coils[pair.B]));
        Table table = new([
            .. (string[])["a", "b"],
            .. by.SelectMany(quantity => (string[])[Name(quantity) + " a", "b"]),
            "apart",
            .. turns ? (string[])["hum left"] : [],
            .. carried,
        ]);
        foreach (CoilPair pair in answer.Pairs)
        {
            CoilRow a = coils[pair.A],
                b = coils[pair.B];
            string hum = HasTurns(a) && HasTurns(b) ? Level(a, b) : "–";
            table.Add([
                a.Tag,
                b.Tag,
                .. by.SelectMany(quantity => (string[])[Value(a, quantity), Value(b, quantity)]),
                Percent(pair.Difference),
                .. turns ? (string[])[hum] : [],
                .. carried.Select(heading => $"{a.Carried.GetValueOrDefault(heading, "–")} / {b.Carried.GetValueOrDefault(heading, "–")}"),
            ]);
        }

        if (answer.Pairs.Count > 0)
        {
            table.Write(writer, "");
        }

        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{answer.Pairs.Count} pairs, {Percent(answer.Total)} apart in all; no other choice of as many pairs is closer."
            )
        );
        if (answer.Left.Count > 0)
        {
            writer.WriteLine($"Back to stock: {string.Join(", ", answer.Left.Select(place => coils[place].Tag))}");
        }

        if (turns)
        {
            writer.WriteLine(
                "Hum left: against the same two coils adding, from the turns (counter ±0.2 %, common practice), for coils of equal size."
            );
        }
    }

    private static bool HasTurns(CoilRow coil) => coil.Values.ContainsKey("turns");

    private static string Level(CoilRow a, CoilRow b)
    {
        Physics.Estimate level = HumResidue.Level(a.Value("turns"), b.Value("turns"));
        return level.Value < -100
            ? string.Create(CultureInfo.InvariantCulture, $"under {level.High:0} dB")
            : string.Create(CultureInfo.InvariantCulture, $"{level.Value:0} dB (up to {level.High:0})");
    }

    private static string Name(string quantity) => quantity == QuantityKey.DcResistance ? "ohms at 20 °C" : quantity;

    private static string Value(CoilRow coil, string quantity) =>
        QuantityParser.Format(coil.Value(quantity), CoilTable.Quantities[quantity].Kind, 4);

    private static string Percent(double part) => string.Create(CultureInfo.InvariantCulture, $"{100 * part:0.00} %");
}
