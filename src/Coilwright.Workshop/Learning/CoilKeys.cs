using System.Globalization;
using Coilwright.Analysis.Learning;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Learning;

/// <summary>By what names the coils of a shop are told apart when it learns from them.</summary>
public static class CoilKeys
{
    private const string LineMark = " (line ";

    /// <summary>The bobbin: core length and width, winding height, and the radius of its ends where it is no racetrack.</summary>
    public static string Bobbin(RecipeBobbin bobbin)
    {
        double width = Math.Min(bobbin.CoreLength.Si, bobbin.CoreWidth.Si);
        string ends = Math.Abs(bobbin.EndRadius.Si - width / 2) > KnownParts.SameM ? $", ends {Millimetres(bobbin.EndRadius.Si)} mm" : "";
        string core = $"{Millimetres(bobbin.CoreLength.Si)} × {Millimetres(bobbin.CoreWidth.Si)}";
        return $"{core} × {Millimetres(bobbin.WindingHeight.Si)} mm{ends}";
    }

    /// <summary>What stands in the bobbin: rows of poles with material and size.</summary>
    public static string Core(RecipeCoil coil) =>
        coil.Poles.Count == 0
            ? "air"
            : string.Join(
                " + ",
                coil.Poles.Select(pole =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{pole.PositionsM.Count} × {KeyLabels.Of(pole.Material.Name)}{Own(pole.Material.RelativePermeability)} "
                            + $"{pole.Shape.ToString().ToLowerInvariant()} "
                            + $"{Millimetres(pole.Diameter.Si)} × {Millimetres(pole.Length.Si)} mm"
                    )
                )
            );

    /// <summary>The wire's specification, with what was measured of it.</summary>
    public static string Wire(RecipeWire wire)
    {
        string?[] parts =
        [
            wire.Gauge,
            wire.Insulation,
            wire.Build,
            wire.BareDiameter?.Typed,
            wire.OverallDiameter?.Typed,
            wire.ResistancePerLength?.Typed,
        ];
        return string.Join(' ', parts.Where(part => !string.IsNullOrWhiteSpace(part)).Select(part => part!.Trim()));
    }

    /// <summary>The lot of a spool: as bought, or the spool's own where nobody said; empty for no spool.</summary>
    public static string Lot(string label, IReadOnlyDictionary<string, SpoolRecord> spools)
    {
        if (label.Length == 0)
        {
            return "";
        }

        return spools.TryGetValue(label.ToUpperInvariant(), out SpoolRecord? spool) && spool.Lot.Length > 0
            ? spool.Lot.ToUpperInvariant()
            : "spool " + label.ToUpperInvariant();
    }

    /// <summary>Standard deviation of the wire's ohms per metre before any was measured: twice that of its diameter.</summary>
    public static double WireDoubt(WireModel wire) =>
        wire.MeasuredOhmPerM is { } measured
            ? measured.StandardDeviation / measured.Value
            : 2 * wire.BareDiameterM.StandardDeviation / wire.BareDiameterM.Value;

    /// <summary>The name of an effect in the line that holds: each ending of a line begins another.</summary>
    public static string InLine(string name, int endings) =>
        endings == 0 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}{LineMark}{endings + 1})");

    /// <summary>A name without its line, and how often the line had been ended before it.</summary>
    public static (string Name, int Endings) FromLine(string name)
    {
        int at = name.LastIndexOf(LineMark, StringComparison.Ordinal);
        return
            at > 0
            && name.EndsWith(')')
            && int.TryParse(
                name.AsSpan(at + LineMark.Length, name.Length - at - LineMark.Length - 1),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out int line
            )
            ? (name[..at], line - 1)
            : (name, 0);
    }

    /// <summary>Names of one coil.</summary>
    /// <param name="coil">The coil of the recipe.</param>
    /// <param name="wire">Its wire as modelled.</param>
    /// <param name="lot">Lot of its wire.</param>
    /// <param name="spool">Spool of its wire.</param>
    /// <param name="winder">Its winder; empty when not known.</param>
    /// <param name="endings">How often a line of an effect was ended before the coil was wound.</param>
    public static LearningCoil Of(
        RecipeCoil coil,
        WireModel wire,
        string lot,
        string spool,
        string winder,
        Func<EffectKind, string, int> endings
    )
    {
        string bobbin = Bobbin(coil.Bobbin),
            spec = Wire(coil.Wire);
        int ended = endings(EffectKind.Lot, $"{spec}|{lot}");
        return new LearningCoil(
            InLine(bobbin, endings(EffectKind.Bobbin, bobbin)),
            Core(coil),
            spec,
            InLine(lot, ended),
            spool.ToUpperInvariant(),
            winder.ToUpperInvariant()
        )
        {
            WireDoubt = WireDoubt(wire),
        };
    }

    private static string Own(double? permeability) =>
        permeability is { } own ? string.Create(CultureInfo.InvariantCulture, $" of permeability {own}") : "";

    private static string Millimetres(double metres) =>
        (Math.Round(metres / KnownParts.SameM) * KnownParts.SameM * 1e3).ToString("0.##", CultureInfo.InvariantCulture);
}
