using Coilwright.Formats.Csv;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Notes;

namespace Coilwright.Formats.Notes;

/// <summary>The unit of a column whose heading names none: by the size of its numbers, and told as assumed.</summary>
internal static class NoteUnits
{
    /// <summary>No coil reads so few ohms, or so many henries; a bench is not so hot in °C.</summary>
    private const double FewestOhms = 100,
        MostHenries = 20,
        HottestC = 45;

    /// <summary>The unit and where it comes from.</summary>
    public static (string Unit, string From) Assumed(NoteRole role, IEnumerable<string> cells, TableNumbers numbers)
    {
        if (role.Kind is not { } kind)
        {
            return ("", "");
        }

        double[] bare =
        [
            .. cells.Select(cell => numbers.TryNumber(cell, out double number, out _) ? number : double.NaN).Where(double.IsFinite).Order(),
        ];
        if (bare.Length == 0)
        {
            return ("", kind == QuantityKind.Turns ? "" : "each cell has its own");
        }

        double middle = Math.Abs(bare[bare.Length / 2]);
        return kind switch
        {
            QuantityKind.Resistance => (middle < FewestOhms ? "kΩ" : "Ω", "assumed from the size of the numbers"),
            QuantityKind.Inductance => (middle > MostHenries ? "mH" : "H", "assumed from the size of the numbers"),
            QuantityKind.Temperature => (middle > HottestC ? "°F" : "°C", "assumed from the size of the numbers"),
            QuantityKind.Frequency => ("Hz", "assumed"),
            _ => ("", ""),
        };
    }
}
