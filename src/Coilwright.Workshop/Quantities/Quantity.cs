using System.Collections.Frozen;
using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Quantities;

/// <summary>A quantity that is measured or forecast, and all that every room says of it.</summary>
/// <param name="Key">As in files and records.</param>
/// <param name="Label">For people.</param>
/// <param name="Kind">What it measures; null for a plain number or a level.</param>
/// <param name="Unit">SI unit of the stored value; empty for a plain number.</param>
/// <param name="DisplayUnit">Unit in which a range of it is told.</param>
/// <param name="Beside">What is told with a value.</param>
public sealed record Quantity(string Key, string Label, QuantityKind? Kind, string Unit, string DisplayUnit, StandsBeside Beside)
{
    private static readonly Quantity[] s_all =
    [
        Of(QuantityKey.DcResistance, "DC resistance", QuantityKind.Resistance, "Ω", "kΩ", StandsBeside.Temperature) with
        {
            Field = "resistance",
            Aliases = ["dcr", "resistance", "r"],
            IsBurden = true,
        },
        Of(QuantityKey.Inductance, "inductance", QuantityKind.Inductance, "H", "H", StandsBeside.Frequency) with
        {
            FigureLabel = "inductance at 1 kHz",
            Aliases = ["l"],
        },
        Of(QuantityKey.Q, "Q", null, "", "", StandsBeside.Frequency),
        Of(QuantityKey.AcResistance, "AC resistance", QuantityKind.Resistance, "Ω", "kΩ", StandsBeside.Frequency),
        Of(QuantityKey.LoadedPeak, "loaded peak", QuantityKind.Frequency, "Hz", "Hz") with
        {
            FigureLabel = "resonance, loaded",
            Field = "peak",
            Aliases = ["peak"],
        },
        Of(QuantityKey.UnloadedPeak, "unloaded peak", QuantityKind.Frequency, "Hz", "Hz") with
        {
            FigureLabel = "resonance, unloaded",
        },
        Of(QuantityKey.LoadedPeakGain, "loaded peak gain", null, "dB", "dB") with
        {
            FigureLabel = "height of the loaded resonance",
        },
        Of(QuantityKey.Capacitance, "capacitance", QuantityKind.Capacitance, "F", "pF", StandsBeside.Frequency) with
        {
            IsBurden = true,
        },
        Of(QuantityKey.AirInductance, "air inductance", QuantityKind.Inductance, "H", "H") with
        {
            FigureLabel = "inductance without cores",
        },
        Of(QuantityKey.Turns, "turns", QuantityKind.Turns, "", "turns"),
        Of(QuantityKey.Build, "build", QuantityKind.Length, "m", "mm") with
        {
            IsBurden = true,
        },
        Of(QuantityKey.BareDiameter, "bare diameter", QuantityKind.Length, "m", "mm"),
        Of(QuantityKey.OverallDiameter, "overall diameter", QuantityKind.Length, "m", "mm"),
        Of(QuantityKey.OuterLength, "outer length", QuantityKind.Length, "m", "mm"),
        Of(QuantityKey.OuterWidth, "outer width", QuantityKind.Length, "m", "mm"),
        Of(QuantityKey.MeanTurnLength, "mean turn length", QuantityKind.Length, "m", "mm") with
        {
            FigureLabel = "mean turn",
        },
        Of(QuantityKey.WireLength, "wire length", QuantityKind.Length, "m", "m") with
        {
            IsBurden = true,
        },
        Of(QuantityKey.WireMass, "wire mass", QuantityKind.Mass, "kg", "g") with
        {
            IsBurden = true,
        },
        Of(QuantityKey.WireResistance, "ohms per metre of the wire", QuantityKind.ResistancePerLength, "Ω/m", "Ω/m"),
        Of(QuantityKey.ResistancePerLength, "resistance per length", QuantityKind.ResistancePerLength, "Ω/m", "Ω/m"),
        Of(QuantityKey.Fill, "fill", null, "", "") with
        {
            IsBurden = true,
        },
        Of(QuantityKey.Output, "output", null, "V·s/m", "mV·s/m") with
        {
            FigureLabel = "output, mean of the strings",
        },
        Of(QuantityKey.Hum, "hum", null, "m²", "m²") with
        {
            FigureLabel = "hum, effective area",
            IsBurden = true,
        },
        Of(QuantityKey.PoleField, "field over pole", QuantityKind.FluxDensity, "T", "mT", StandsBeside.Distance) with
        {
            FigureLabel = "field over the pole",
        },
        Of(QuantityKey.FirstSwing, "first swing", null, "", ""),
        Of(QuantityKey.Charge, "charge of the magnets, part of full", QuantityKind.Fraction, "", "%") with
        {
            ShortLabel = "charge of the magnets",
        },
        Of(QuantityKey.ChargeField, "charge of the magnets, field", QuantityKind.FluxDensity, "T", "mT", StandsBeside.Distance),
        Of(QuantityKey.SetOffset, "target level difference, dB", null, "dB", "dB"),
        // what is only forecast
        Of(QuantityKey.TurnsPerLayer, "turns per layer", null, "", ""),
        Of(QuantityKey.Layers, "layers", null, "", ""),
        Of(QuantityKey.Impedance, "impedance", QuantityKind.Resistance, "Ω", "kΩ") with
        {
            FigureLabel = "impedance at 1 kHz",
        },
        Of(QuantityKey.PeakImpedance, "peak impedance", QuantityKind.Resistance, "Ω", "kΩ") with
        {
            FigureLabel = "impedance at the unloaded resonance",
        },
        Of(QuantityKey.WindingCapacitance, "winding", QuantityKind.Capacitance, "F", "pF"),
        Of(QuantityKey.LeadCapacitance, "leads", QuantityKind.Capacitance, "F", "pF"),
        Of(QuantityKey.GroundedCapacitance, "grounded", QuantityKind.Capacitance, "F", "pF") with
        {
            FigureLabel = "to metal",
        },
        Of(QuantityKey.BetweenCoils, "between coils", QuantityKind.Capacitance, "F", "pF") with
        {
            FigureLabel = "between the coils",
        },
        Of(QuantityKey.Coupling, "coupling", null, "", "") with
        {
            FigureLabel = "coupling of the coils",
        },
        Of(QuantityKey.ResistanceMismatch, "resistance mismatch", null, "", "") with
        {
            FigureLabel = "mismatch of the coils' resistance",
        },
        Of(QuantityKey.InductanceMismatch, "inductance mismatch", null, "", "") with
        {
            FigureLabel = "mismatch of the coils' inductance",
        },
        Of(QuantityKey.UnloadedPeakGain, "unloaded peak gain", null, "dB", "dB") with
        {
            FigureLabel = "height of the unloaded resonance",
        },
        Of(QuantityKey.LoadedPeakQ, "loaded peak Q", null, "", "") with
        {
            FigureLabel = "Q of the loaded resonance",
        },
        Of(QuantityKey.Minus3Db, "−3 dB", QuantityKind.Frequency, "Hz", "Hz"),
        Of(QuantityKey.Level, "level", null, "dB", "dB") with
        {
            FigureLabel = "level at 20 Hz",
        },
        Of(QuantityKey.Noise, "noise", null, "dBV", "dBV") with
        {
            FigureLabel = "thermal noise, 20 Hz to 20 kHz",
        },
        Of(QuantityKey.Linkage, "linkage", null, "Wb", "µWb") with
        {
            FigureLabel = "flux linkage of the string",
        },
        Of(QuantityKey.Sensitivity, "sensitivity", null, "V·s/m", "mV·s/m") with
        {
            FigureLabel = "output",
        },
        Of(QuantityKey.FieldAtStrings, "field at strings", QuantityKind.FluxDensity, "T", "mT") with
        {
            FigureLabel = "field at the string",
        },
        Of(QuantityKey.HumResidual, "residual", null, "dB", "dB"),
        Of(QuantityKey.GradientX, "gradient x", null, "m³", "m³") with
        {
            FigureLabel = "hum, field changing along x",
        },
        Of(QuantityKey.GradientY, "gradient y", null, "m³", "m³") with
        {
            FigureLabel = "hum, field changing along y",
        },
        Of(QuantityKey.GradientZ, "gradient z", null, "m³", "m³") with
        {
            FigureLabel = "hum, field changing along z",
        },
    ];

    private static readonly FrozenDictionary<string, Quantity> s_byKey = s_all.ToFrozenDictionary(one => one.Key, StringComparer.Ordinal);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Quantity> All => s_all;

    public static Quantity DcResistance => s_byKey[QuantityKey.DcResistance];
    public static Quantity AcResistance => s_byKey[QuantityKey.AcResistance];
    public static Quantity Inductance => s_byKey[QuantityKey.Inductance];
    public static Quantity Q => s_byKey[QuantityKey.Q];
    public static Quantity LoadedPeak => s_byKey[QuantityKey.LoadedPeak];
    public static Quantity Turns => s_byKey[QuantityKey.Turns];
    public static Quantity WireLength => s_byKey[QuantityKey.WireLength];
    public static Quantity WireMass => s_byKey[QuantityKey.WireMass];
    public static Quantity PoleField => s_byKey[QuantityKey.PoleField];
    public static Quantity FirstSwing => s_byKey[QuantityKey.FirstSwing];

    /// <summary>For people, where there is little room.</summary>
    public string ShortLabel { get; init; } = Label;

    /// <summary>For people, as a figure of a forecast or on a paper; null where <see cref="ComparedLabel"/> says it.</summary>
    private string? FigureLabel { get; init; }

    /// <summary>Its field in forms for readings.</summary>
    public string Field { get; init; } = Key;

    /// <summary>Other names that people type for it, in small letters.</summary>
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>True where more of it is worse by nature.</summary>
    public bool IsBurden { get; init; }

    /// <summary>True where values are compared as they would be at 20 °C.</summary>
    public bool IsComparedAt20C => Beside == StandsBeside.Temperature;

    /// <summary>What is compared, for people: "DC resistance at 20 °C".</summary>
    public string ComparedLabel => IsComparedAt20C ? ShortLabel + " at 20 °C" : ShortLabel;

    /// <summary>The name of a figure of it, on a page, a paper and a terminal: "resonance, loaded".</summary>
    public string FigureName => FigureLabel ?? ComparedLabel;

    /// <summary>The quantity of a key; null for a key of no quantity.</summary>
    public static Quantity? Find(string key) => s_byKey.GetValueOrDefault(key);

    /// <summary>The quantity of a result, also of one coil: "coils[0].inductance"; null where it is none.</summary>
    public static Quantity? FindResult(string name) => Find(name[(name.LastIndexOf('.') + 1)..]);

    /// <summary>The quantity that a person means by another name than its key or label; null where it is none.</summary>
    public static Quantity? FindAlias(string typed) =>
        Array.Find(s_all, one => one.Aliases.Contains(typed, StringComparer.OrdinalIgnoreCase));

    /// <summary>
    /// The value by which readings and targets are held against each other: a DC resistance at 20 °C where its temperature is known, all
    /// else as it stands.
    /// </summary>
    /// <param name="si">As read, SI.</param>
    /// <param name="temperatureC">Temperature it was read at, °C; null when nobody wrote it down.</param>
    public double Comparable(double si, double? temperatureC) =>
        IsComparedAt20C && temperatureC is { } celsius ? CopperWire.CorrectTo20C(si, celsius) : si;

    /// <summary>As <see cref="Comparable(double, double?)"/>, by key; what has no such key stays as it stands.</summary>
    public static double Comparable(string key, double si, double? temperatureC) => Find(key)?.Comparable(si, temperatureC) ?? si;

    /// <summary>Its key in the results of a pickup: that of one coil, or its own where there is one coil.</summary>
    /// <param name="coil">Which coil, from 0.</param>
    /// <param name="coils">How many the pickup has.</param>
    public string KeyOfCoil(int coil, int coils) => coils == 1 ? Key : string.Create(CultureInfo.InvariantCulture, $"coils[{coil}].{Key}");

    /// <summary>What the numbers of a target are multiplied by to compare them.</summary>
    public double Factor(Target target) => Comparable(1, target.TemperatureC);

    /// <summary>A range of it, told in its display unit.</summary>
    /// <param name="min">Smallest, SI.</param>
    /// <param name="max">Largest, SI.</param>
    /// <param name="example">A sensible entry.</param>
    public Limits Within(double min, double max, string example) =>
        new(Kind ?? throw new InvalidOperationException($"{Key} has no unit."), min, max, DisplayUnit, example);

    /// <summary>A value for people, with three digits; a plain number with its label.</summary>
    /// <param name="si">The value, SI.</param>
    public string Written(double si) =>
        Kind is { } kind ? QuantityParser.Format(si, kind, 3) : $"{Label} {si.ToString("0.0", CultureInfo.InvariantCulture)}";

    private static Quantity Of(
        string key,
        string label,
        QuantityKind? kind,
        string unit,
        string displayUnit,
        StandsBeside beside = StandsBeside.Nothing
    ) => new(key, label, kind, unit, displayUnit, beside);
}
