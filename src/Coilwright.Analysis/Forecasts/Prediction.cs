using Coilwright.Analysis.Comparisons;
using Coilwright.Physics;

namespace Coilwright.Analysis.Forecasts;

/// <summary>One forecast number: value, interval, basis, and how it came about.</summary>
/// <param name="Name">Quantity name of the file format, for example "dcResistance".</param>
/// <param name="Unit">SI unit as printed: "Ω", "H", "F", "m", "kg", "Hz", "dB", "1".</param>
/// <param name="Estimate">Value and 95 % interval in that unit.</param>
/// <param name="Derivation">How it was derived.</param>
public sealed record Figure(string Name, string Unit, Estimate Estimate, Derivation Derivation)
{
    /// <summary>The value alone, in <see cref="Unit"/>.</summary>
    public double Value => Estimate.Value;
}

/// <summary>The answer to "where does this number come from?".</summary>
/// <param name="Symbols">Formula in symbols.</param>
/// <param name="Numbers">The same formula with the numbers put in.</param>
/// <param name="Inputs">What went in.</param>
/// <param name="Source">Published source, or "common practice, no source", or "from memory".</param>
/// <param name="NarrowBy">Name of the input whose measurement would narrow the interval most; null when exact.</param>
public sealed record Derivation(string Symbols, string Numbers, IReadOnlyList<DerivationInput> Inputs, string Source, string? NarrowBy);

/// <summary>One input of a derivation.</summary>
/// <param name="Name">In workshop words.</param>
/// <param name="Unit">SI unit.</param>
/// <param name="Estimate">Value and interval.</param>
/// <param name="Source">Where the value comes from.</param>
/// <param name="VarianceShare">Its share of the result's variance, 0…1.</param>
public sealed record DerivationInput(string Name, string Unit, Estimate Estimate, string Source, double VarianceShare);

/// <summary>What is foretold of one coil.</summary>
public sealed record CoilForecast
{
    /// <summary>The recipe's word for the coil.</summary>
    public required string Name { get; init; }

    /// <summary>Turns in one pass from flange to flange.</summary>
    public required Figure TurnsPerLayer { get; init; }

    /// <summary>Passes from flange to flange; the last may be partial.</summary>
    public required Figure Layers { get; init; }

    /// <summary>Insulated wire area over window area; null when the bobbin states no room for the winding.</summary>
    public Figure? Fill { get; init; }

    /// <summary>Radial thickness of the winding, m.</summary>
    public required Figure Build { get; init; }

    /// <summary>Outside length of the winding along x, m.</summary>
    public required Figure OuterLength { get; init; }

    /// <summary>Outside width of the winding along y, m.</summary>
    public required Figure OuterWidth { get; init; }

    /// <summary>Length of the mean turn, m.</summary>
    public required Figure MeanTurnLength { get; init; }

    /// <summary>Wire in the coil without leads, m.</summary>
    public required Figure WireLength { get; init; }

    /// <summary>Mass of that wire with its enamel, kg.</summary>
    public required Figure WireMass { get; init; }

    /// <summary>DC resistance at the recipe's temperature, Ω.</summary>
    public required Figure DcResistance { get; init; }

    /// <summary>Inductance of the winding without its cores, H.</summary>
    public required Figure AirInductance { get; init; }

    /// <summary>Series inductance at 1 kHz with cores and metalwork, H.</summary>
    public required Figure Inductance { get; init; }

    /// <summary>Self-capacitance of the winding, F.</summary>
    public required Figure Capacitance { get; init; }

    /// <summary>Turns × area with the cores, what a uniform field along z links, m²; signed by the winding.</summary>
    public double HumAreaM2 { get; init; }

    /// <summary>Every figure of the coil, in the order above; without a fill where there is none.</summary>
    public IEnumerable<Figure> All =>
        [
            TurnsPerLayer,
            Layers,
            .. Fill is null ? Enumerable.Empty<Figure>() : [Fill],
            Build,
            OuterLength,
            OuterWidth,
            MeanTurnLength,
            WireLength,
            WireMass,
            DcResistance,
            AirInductance,
            Inductance,
            Capacitance,
        ];
}

/// <summary>A resonance on the response curve.</summary>
/// <param name="Frequency">Where the peak stands, Hz.</param>
/// <param name="Gain">Its height over the level at 20 Hz, dB.</param>
/// <param name="Q">Peak frequency over its half-power width.</param>
public sealed record ResonanceForecast(Figure Frequency, Figure Gain, Figure Q)
{
    /// <summary>Frequency, gain and Q.</summary>
    public IEnumerable<Figure> All => [Frequency, Gain, Q];
}

/// <summary>What is foretold of the whole pickup.</summary>
public sealed record PickupForecast
{
    /// <summary>DC resistance between the pickup's wires at the recipe's temperature, Ω.</summary>
    public required Figure DcResistance { get; init; }

    /// <summary>Series inductance between the pickup's wires at 1 kHz, H.</summary>
    public required Figure Inductance { get; init; }

    /// <summary>Capacitance between the pickup's wires, F.</summary>
    public required Figure Capacitance { get; init; }

    /// <summary>What it is made of.</summary>
    public CapacitanceShares? CapacitanceShares { get; init; }

    /// <summary>Null when the bare curve never rises above its low-frequency level.</summary>
    public ResonanceForecast? UnloadedResonance { get; init; }

    /// <summary>Null when no load was given or the loaded curve has no peak.</summary>
    public ResonanceForecast? LoadedResonance { get; init; }

    /// <summary>Coupling factor of the first two coils by their own winding signs; null for one coil.</summary>
    public Figure? Coupling { get; init; }

    /// <summary>Inductance and resistance at the frequencies asked for, in their order.</summary>
    public required IReadOnlyList<SpectrumForecast> Spectrum { get; init; }

    /// <summary>Flux linkage in a uniform hum field of 1 T along z, cores included, m².</summary>
    public required Figure HumEffectiveArea { get; init; }

    /// <summary>What a uniform field leaves of the hum, against all coils adding, dB: 0 for one coil.</summary>
    public required Figure HumResidual { get; init; }

    /// <summary>
    /// Flux linkage in a hum field with dBz/dx, dBz/dy, dBz/dz of 1 T/m, zero in the recipe's origin, m³; what <see
    /// cref="HumEffectiveArea"/> links comes on top.
    /// </summary>
    public required IReadOnlyList<Figure> HumGradient { get; init; }

    /// <summary>What each string does; empty when the recipe has no strings.</summary>
    public IReadOnlyList<StringForecast> Strings { get; init; } = [];

    /// <summary>The magnets' field over each pole; empty without magnets, or when not asked for.</summary>
    public IReadOnlyList<PoleForecast> Poles { get; init; } = [];

    /// <summary>Figures that stand for themselves: files, pages and lists tell each under its own name.</summary>
    public IReadOnlyList<Figure> Others { get; init; } = [];

    /// <summary>Every figure of the pickup but the spectrum; only those that exist.</summary>
    public IEnumerable<Figure> All =>
        [
            DcResistance,
            Inductance,
            Capacitance,
            .. UnloadedResonance is null ? [] : UnloadedResonance.All,
            .. LoadedResonance is null ? [] : LoadedResonance.All,
            .. Coupling is null ? Enumerable.Empty<Figure>() : [Coupling],
            .. Others,
            HumEffectiveArea,
            HumResidual,
            .. HumGradient,
            .. Strings.SelectMany(one => one.All),
            .. Poles.Select(one => one.Field),
        ];
}

/// <summary>What a pickup's capacitance is made of; the shares add up to it. F.</summary>
/// <param name="Winding">The turns among themselves, of all coils.</param>
/// <param name="Leads">The leads.</param>
/// <param name="Grounded">To poles, magnets, plates and covers.</param>
/// <param name="BetweenCoils">From winding to winding.</param>
public sealed record CapacitanceShares(Figure Winding, Figure Leads, Figure Grounded, Figure BetweenCoils)
{
    /// <summary>The four shares.</summary>
    public IEnumerable<Figure> All => [Winding, Leads, Grounded, BetweenCoils];

    /// <summary>Those that add something, or may.</summary>
    public IEnumerable<Figure> Present => All.Where(share => share.Estimate.High > 0);
}

/// <summary>What is foretold of one string.</summary>
/// <param name="Number">1 for the string at the lowest x.</param>
/// <param name="Linkage">Flux through the whole winding that the string at rest causes, Wb.</param>
/// <param name="Sensitivity">Volts per metre a second of vertical velocity, signed by winding and magnet.</param>
/// <param name="Field">Vertical flux density of the magnets at its axis, T.</param>
public sealed record StringForecast(int Number, Figure Linkage, Figure Sensitivity, Figure Field)
{
    /// <summary>Linkage, sensitivity and field.</summary>
    public IEnumerable<Figure> All => [Linkage, Sensitivity, Field];
}

/// <summary>What a gauss meter would read over one pole.</summary>
/// <param name="Number">1 for the pole of its coil at the lowest x.</param>
/// <param name="Coil">Name of its coil.</param>
/// <param name="JigM">Distance over the pole's own top, m.</param>
/// <param name="AtM">Where that is, in the recipe's axes.</param>
/// <param name="Field">Vertical flux density of the magnets there, T, north up positive.</param>
public sealed record PoleForecast(int Number, string Coil, double JigM, Coilwright.Physics.Vector3M AtM, Figure Field);

/// <summary>Series inductance and AC resistance at one frequency.</summary>
/// <param name="FrequencyHz">The frequency, Hz.</param>
/// <param name="Inductance">Series inductance there, H.</param>
/// <param name="Resistance">Series resistance there, the winding's own included, Ω.</param>
public sealed record SpectrumForecast(double FrequencyHz, Figure Inductance, Figure Resistance);

/// <summary>Something the person should know, beside the field it is about.</summary>
/// <param name="Field">Path in the recipe, for example "coils[0].winding.turns".</param>
/// <param name="Message">In workshop words.</param>
/// <param name="MeansItDoesNotFit">True when the winding is thicker than the bobbin has room for.</param>
public sealed record ForecastWarning(string Field, string Message, bool MeansItDoesNotFit = false);

/// <summary>Everything foretold for one recipe.</summary>
/// <param name="Coils">Coil by coil, in the order of the recipe.</param>
/// <param name="Pickup">The whole pickup.</param>
/// <param name="Warnings">What the person should know; empty when nothing.</param>
public sealed record Prediction(IReadOnlyList<CoilForecast> Coils, PickupForecast Pickup, IReadOnlyList<ForecastWarning> Warnings)
{
    /// <summary>Results of the whole pickup by the names that wants, runs and comparisons use; only what exists.</summary>
    public IReadOnlyDictionary<string, NamedFigure> Named { get; init; } = new Dictionary<string, NamedFigure>();

    /// <summary>The values of those results alone, in SI or dB, for comparing them with what is wanted.</summary>
    public IReadOnlyDictionary<string, double> NamedValues =>
        Named.ToDictionary(one => one.Key, one => one.Value.Estimate.Value, StringComparer.Ordinal);

    /// <summary>What small changes of the recipe would do; empty unless asked for.</summary>
    public IReadOnlyList<SensitivityLine> Sensitivity { get; init; } = [];

    /// <summary>The response at the middle of every interval: unloaded, and on the load if there is one; empty unless asked for.</summary>
    public IReadOnlyList<ForecastCurve> Curves { get; init; } = [];

    /// <summary>What the response scatters in: on the load, or bare without one; null unless asked for, and of a silent one.</summary>
    public ResponseBand? Band { get; init; }

    /// <summary>Curves for pictures; null unless asked for.</summary>
    public PickupPictures? Pictures { get; init; }
}

/// <summary>One forecast response.</summary>
/// <param name="Loaded">True on the load, false bare.</param>
/// <param name="Response">Its points.</param>
public sealed record ForecastCurve(bool Loaded, Coilwright.Physics.Circuit.Response Response);
