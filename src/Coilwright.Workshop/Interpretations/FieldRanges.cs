using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Measuring;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Reading;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Solving.Variations;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Interpretations;

/// <summary>What a field holds.</summary>
internal enum FieldKind
{
    /// <summary>Words.</summary>
    Text,

    /// <summary>A size of wire.</summary>
    Gauge,

    /// <summary>Whole things.</summary>
    Count,

    /// <summary>A number without a unit.</summary>
    Number,

    /// <summary>Turns, parts of one allowed.</summary>
    Turns,

    /// <summary>A value with a unit.</summary>
    Quantity,

    /// <summary>What magnets are charged to: full, a share of it, or a field.</summary>
    Charge,

    /// <summary>A ratio in decibels.</summary>
    Decibels,

    /// <summary>A word of a table: a key in documents, its label for people.</summary>
    Word,

    /// <summary>Yes or no.</summary>
    Truth,
}

/// <summary>Kind and range of every field that pages have, by the end of its name.</summary>
internal static partial class FieldRanges
{
    private static readonly FrozenDictionary<string, FieldKind> s_plain = new Dictionary<string, FieldKind>
    {
        ["wire.gauge"] = FieldKind.Gauge,
        ["spool.gauge"] = FieldKind.Gauge,
        ["winding.turns"] = FieldKind.Turns,
        ["entry.turns"] = FieldKind.Turns,
        ["ownTensions.gauge"] = FieldKind.Gauge,
        ["counter.turns"] = FieldKind.Turns,
        ["counter.counted"] = FieldKind.Turns,
        ["winder.turns"] = FieldKind.Turns,
        ["winder.counted"] = FieldKind.Turns,
        ["wind.counter"] = FieldKind.Turns,
        ["batch.more"] = FieldKind.Count,
        ["people.days"] = FieldKind.Count,
        ["parts.count"] = FieldKind.Count,
        ["charts.last"] = FieldKind.Count,
        ["charts.from"] = FieldKind.Count,
        ["charts.group"] = FieldKind.Count,
        ["charts.lambda"] = FieldKind.Number,
        ["charts.allowance"] = FieldKind.Number,
        ["charts.decision"] = FieldKind.Number,
        ["entry.q"] = FieldKind.Number,
        ["magnets.charge"] = FieldKind.Charge,
        ["set.offset"] = FieldKind.Decibels,
        ["poles.count"] = FieldKind.Count,
        ["strings.count"] = FieldKind.Count,
        ["wire.grade"] = FieldKind.Count,
        ["batch.quantity"] = FieldKind.Count,
        ["measure.lot"] = FieldKind.Count,
        ["measure.width"] = FieldKind.Number,
        ["measure.shown"] = FieldKind.Number,
        ["bobbin.fillLimit"] = FieldKind.Number,
        ["volume.setting"] = FieldKind.Number,
        ["tone.setting"] = FieldKind.Number,
        ["test.q"] = FieldKind.Number,
        ["poles.grounded"] = FieldKind.Truth,
        ["magnets.grounded"] = FieldKind.Truth,
        ["metalwork.grounded"] = FieldKind.Truth,
        ["bobbin.measured"] = FieldKind.Truth,
        ["poles.measured"] = FieldKind.Truth,
        ["magnets.measured"] = FieldKind.Truth,
        ["metalwork.measured"] = FieldKind.Truth,
    }.ToFrozenDictionary();

    /// <summary>Fields of a document and questions about one, where a unit is always written.</summary>
    private static readonly FrozenDictionary<string, Limits> s_recipe = new Dictionary<string, Limits>
    {
        ["winding.pitch"] = Allowed.Pitch,
        ["winding.tension"] = Allowed.Tension,
        ["winding.speed"] = Allowed.Speed,
        ["winding.build"] = Allowed.MaxBuild,
        ["winding.capacitance"] = Allowed.CoilCapacitance,
        ["winding.stretch"] = Allowed.Stretch,
        ["wire.bareDiameter"] = Allowed.BareDiameter,
        ["wire.overallDiameter"] = Allowed.OverallDiameter,
        ["wire.resistancePerLength"] = Allowed.OhmPerM,
        ["bobbin.coreLength"] = Allowed.CoreLength,
        ["bobbin.coreWidth"] = Allowed.CoreWidth,
        ["bobbin.endRadius"] = Allowed.EndRadius,
        ["bobbin.windingHeight"] = Allowed.WindingHeight,
        ["bobbin.maxBuild"] = Allowed.MaxBuild,
        ["bobbin.wall"] = Allowed.Wall,
        ["bobbin.flange"] = Allowed.Wall,
        ["leads.length"] = Allowed.LeadLength,
        ["leads.toScreen"] = Allowed.CablePerLength,
        ["leads.between"] = Allowed.CablePerLength,
        ["poles.diameter"] = Allowed.PoleSize,
        ["poles.thickness"] = Allowed.PoleSize,
        ["poles.headDiameter"] = Allowed.PoleSize,
        ["poles.headHeight"] = Allowed.PoleSize,
        ["poles.width"] = Allowed.BladeWidth,
        ["poles.length"] = Allowed.PoleSize,
        ["poles.spacing"] = Allowed.PoleSpacing,
        ["poles.top"] = Allowed.Place,
        ["magnets.size"] = Allowed.PartSize,
        ["magnets.centre"] = Allowed.Place,
        ["metalwork.size"] = Allowed.PartSize,
        ["metalwork.centre"] = Allowed.Place,
        ["metalwork.thickness"] = Allowed.Sheet,
        ["metalwork.length"] = Allowed.PartSize,
        ["metalwork.width"] = Allowed.PartSize,
        ["metalwork.top"] = Allowed.Place,
        ["metalwork.bottom"] = Allowed.Place,
        ["metalwork.corner"] = Allowed.EndRadius,
        ["strings.spacing"] = Allowed.PoleSpacing,
        ["strings.clearance"] = Allowed.Clearance,
        ["dcResistance.nominal"] = Allowed.DcResistance,
        ["inductance.nominal"] = Allowed.Inductance,
        ["dcResistance.tolerance"] = Allowed.Tolerance,
        ["inductance.tolerance"] = Allowed.Tolerance,
        ["inductance.at"] = Allowed.Frequency,
        ["volume.resistance"] = Allowed.PotResistance,
        ["tone.resistance"] = Allowed.PotResistance,
        ["tone.capacitor"] = Allowed.ToneCapacitor,
        ["cable.capacitance"] = Allowed.LoadCapacitance,
        ["input.resistance"] = Allowed.PotResistance,
        ["variant.spacing"] = RecipeVariation.Spacing,
        ["variant.bass"] = RecipeVariation.Spacing,
        ["variant.longerCore"] = RecipeVariation.Longer,
    }.ToFrozenDictionary();

    /// <summary>Parts whose lengths may carry a ±.</summary>
    private static readonly string[] s_sized = ["bobbin.", "poles.", "magnets.", "metalwork."];

    /// <summary>Fields of lengths that may carry a ±.</summary>
    private static readonly FrozenSet<string> s_sizes = s_recipe
        .Keys.Where(field => field == "strings.clearance" || s_sized.Any(part => field.StartsWith(part, StringComparison.Ordinal)))
        .ToFrozenSet();

    /// <summary>Fields of the bench, where a bare number is in the unit beside its range, or in the SI unit.</summary>
    private static readonly FrozenDictionary<string, (Limits Limits, string? Customary)> s_bench = new Dictionary<string, (Limits, string?)>
    {
        ["spool.received"] = (StockService.Mass, "g"),
        ["spool.tare"] = (StockService.Mass, "g"),
        ["spool.gross"] = (StockService.Mass, "g"),
        ["spool.length"] = (StockService.Length, null),
        ["spool.resistance"] = (StockService.Ohm, null),
        ["spool.temperature"] = (PossibleReading.Temperature, null),
        ["test.resistance"] = (TestReader.Ohm, null),
        ["test.temperature"] = (PossibleReading.Temperature, null),
        ["test.inductance"] = (TestReader.Henry, null),
        ["test.inductanceAt"] = (TestReader.Hertz, null),
        ["test.qAt"] = (TestReader.Hertz, null),
        ["test.acResistance"] = (TestReader.Ohm, null),
        ["test.peak"] = (TestReader.Hertz, null),
        ["test.jig"] = (TestReader.Jig, "mm"),
        ["clocks.bath"] = (PottingService.Bath, null),
        ["clocks.limit"] = (PottingService.Bath, null),
        ["clocks.room"] = (InkService.Room, null),
        ["shop.room"] = (WindingService.Room, null),
        ["bathLimits.limit"] = (ShopRulesReader.Bath, null),
        ["ink.potLife"] = (ShopRulesReader.InkTime, "h"),
        ["ink.fullCure"] = (ShopRulesReader.InkTime, "d"),
        ["ink.sheetTemperature"] = (ShopRulesReader.Room, null),
        ["gaussSpread"] = (ShopRulesReader.Part, "%"),
        ["sizes.measured"] = (SizeRulesReader.Within, "mm"),
        ["sizes.moulded"] = (SizeRulesReader.Within, "mm"),
        ["sizes.byHand"] = (SizeRulesReader.Within, "mm"),
        ["sizes.common"] = (SizeRulesReader.Within, "mm"),
        ["sizes.clearance"] = (SizeRulesReader.Within, "mm"),
        ["sizes.mostPart"] = (SizeRulesReader.Most, "%"),
        ["sizes.mouldedShare"] = (SizeRulesReader.Share, "%"),
        ["sizes.byHandShare"] = (SizeRulesReader.Share, "%"),
        ["sizes.commonShare"] = (SizeRulesReader.Share, "%"),
        ["chargeTolerance"] = (ShopRulesReader.Part, "%"),
        ["speed.low"] = (Allowed.Speed, "rpm"),
        ["speed.high"] = (Allowed.Speed, "rpm"),
        ["tension.low"] = (Allowed.Tension, "gf"),
        ["tension.high"] = (Allowed.Tension, "gf"),
        ["ownTensions.tension"] = (Allowed.Tension, "gf"),
        ["traverse.screwLead"] = (MachineReader.Lead, "mm"),
        ["traverse.travelPerStep"] = (MachineReader.Travel, "mm"),
        ["cams.stroke"] = (MachineReader.Stroke, "mm"),
        ["timed.speedSpread"] = (MachineReader.Spread, "%"),
        ["timed.stopSpread"] = (MachineReader.Stop, null),
        ["hold.ohmPerM"] = (Allowed.OhmPerM, null),
        ["entry.resistance"] = (new Limits(QuantityKind.Resistance, 0, PossibleReading.LargestOhm, "Ω", "6.2 kΩ"), null),
        ["entry.temperature"] = (PossibleReading.Temperature, null),
        ["entry.inductance"] = (PossibleReading.Inductance, null),
        ["entry.inductanceAt"] = (PossibleReading.Frequency, null),
        ["listen.pitch"] = Asked(PluckLimits.Pitch),
        ["listen.pluck"] = Asked(PluckLimits.Pluck),
        ["listen.width"] = Asked(PluckLimits.Width),
        ["listen.length"] = Asked(PluckLimits.LengthOnPage),
        ["measure.capacitor"] = Asked(MeasureLimits.Capacitor),
        ["measure.peak"] = Asked(MeasureLimits.Peak),
        ["measure.tolerance"] = Asked(MeasureLimits.Tolerance),
        ["measure.resistance"] = Asked(MeasureLimits.Winding),
        ["measure.inductance"] = Asked(MeasureLimits.MeterInductance),
        ["measure.at"] = Asked(MeasureLimits.MeterFrequency),
        ["measure.hungCapacitance"] = Asked(MeasureLimits.HungCapacitance),
        ["measure.hungResistance"] = Asked(MeasureLimits.HungResistance),
        ["measure.from"] = Asked(MeasureLimits.SignalFrom),
        ["measure.to"] = Asked(MeasureLimits.SignalTo),
        ["measure.length"] = Asked(MeasureLimits.SignalLength),
        ["measure.resistor"] = Asked(MeasureLimits.Resistor),
        ["measure.inputResistance"] = Asked(MeasureLimits.InputResistance),
        ["measure.inputCapacitance"] = Asked(MeasureLimits.InputCapacitance),
    }
        .Concat(
            ShopRules.UsualTolerances.Keys.Select(key => KeyValuePair.Create("testTolerances." + key, (ShopRulesReader.Part, (string?)"%")))
        )
        .ToFrozenDictionary();

    /// <summary>Fields that hold a word of a table, with the words; none where any may stand there.</summary>
    private static readonly FrozenDictionary<string, IReadOnlyCollection<string>> s_words = new Dictionary<
        string,
        IReadOnlyCollection<string>
    >
    {
        ["wire.insulation"] = Catalogue.Insulations,
        ["spool.insulation"] = Catalogue.Insulations,
        ["spool.build"] = Catalogue.Builds,
        ["poles.material"] = Catalogue.Materials,
        ["magnets.material"] = Catalogue.Materials,
        ["metalwork.material"] = Catalogue.Materials,
        ["strings.material"] = Catalogue.Materials,
        ["bobbin.material"] = [],
        ["leads.construction"] = LeadReader.Constructions,
        ["bathLimits.material"] = [],
        ["potting.kind"] = RecipeReader.PottingKinds,
        ["bobbin.made"] = MakingReader.Words,
        ["poles.made"] = MakingReader.Words,
        ["magnets.made"] = MakingReader.Words,
        ["metalwork.made"] = MakingReader.Words,
    }.ToFrozenDictionary();

    /// <summary>A field of a question, whose bare number is in the unit of its range.</summary>
    private static (Limits Limits, string? Customary) Asked(Limits limits) => (limits, limits.Unit);

    /// <summary>The words that may stand in a field; empty where any may.</summary>
    public static IReadOnlyCollection<string> WordsOf(string field) => s_words[End(field)];

    /// <summary>True for a length of a part, behind which a ± may stand.</summary>
    public static bool IsSize(string field) => s_sizes.Contains(End(field));

    public static FieldKind KindOf(string field)
    {
        string end = End(field);
        if (s_words.ContainsKey(end))
        {
            return FieldKind.Word;
        }

        if (s_plain.TryGetValue(end, out FieldKind kind))
        {
            return kind;
        }

        return s_recipe.ContainsKey(end) || s_bench.ContainsKey(end) ? FieldKind.Quantity : FieldKind.Text;
    }

    /// <summary>Range of a quantity's field, the unit of a bare number there, and whether a bare number is refused.</summary>
    public static (Limits Limits, string? Customary, bool UnitRequired) Of(string field)
    {
        string end = End(field);
        return s_recipe.TryGetValue(end, out Limits? limits) ? (limits, null, true) : (s_bench[end].Limits, s_bench[end].Customary, false);
    }

    /// <summary>
    /// The last two steps without places in lists: "coils[0].winding.turns" is "winding.turns", "magnets[1].size[2]" is "magnets.size".
    /// </summary>
    private static string End(string field)
    {
        string[] steps = Places().Replace(field, "").Split('.');
        return steps.Length < 2 ? field : steps[^2] + "." + steps[^1];
    }

    [GeneratedRegex(@"\[\d+\]", RegexOptions.CultureInvariant)]
    private static partial Regex Places();
}
