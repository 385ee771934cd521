using Coilwright.Analysis.Quantities;

namespace Coilwright.Analysis.Forecasts;

/// <summary>A formula as shown to the person: symbols, source, and unit of the result.</summary>
internal sealed record Formula(string Name, string Unit, string Symbols, string Source)
{
    private const string Energy = "energy method, docs/theory.md";
    private const string Arithmetic = "arithmetic";
    private const string Iec60028 =
        "IEC 60028: ρ = 1/58 Ω·mm²/m (metric sizes 1/58.5, as IEC 60317-0-1 prints them), α = 0.00393 /K at 20 °C";
    private const string Neumann =
        "Neumann's integral over the real section; checked against handbook coils and an independent solver (docs/evidence.md)";

    public static readonly IReadOnlyDictionary<CoilResult, Formula> Coil = new Dictionary<CoilResult, Formula>
    {
        [CoilResult.TurnsPerLayer] = new(QuantityKey.TurnsPerLayer, "1", "window ÷ pitch", Arithmetic),
        [CoilResult.Layers] = new(QuantityKey.Layers, "1", "turns ÷ turns per layer", Arithmetic),
        [CoilResult.Fill] = new("fill", "1", "N·π/4·d² ÷ (window height × room for the build), d over the enamel", Arithmetic),
        [CoilResult.Build] = new(
            "build",
            "m",
            "N·π/4·d² ÷ (packing × window height), d over the enamel",
            "packing from the lay simulation"
        ),
        [CoilResult.OuterLength] = new(QuantityKey.OuterLength, "m", "core length + 2 × build", Arithmetic),
        [CoilResult.OuterWidth] = new(QuantityKey.OuterWidth, "m", "core width + 2 × build", Arithmetic),
        [CoilResult.MeanTurnLength] = new(QuantityKey.MeanTurnLength, "m", "wire length ÷ N", Arithmetic),
        [CoilResult.WireLength] = new(
            QuantityKey.WireLength,
            "m",
            "Σ over layers: turns in the layer × (straights + 2π·(end radius + distance))",
            Arithmetic
        ),
        [CoilResult.WireMass] = new(
            QuantityKey.WireMass,
            "kg",
            "length × (copper + enamel per metre)",
            "copper 8,890 kg/m³ (IEC 60028), enamel 1,200 kg/m³"
        ),
        [CoilResult.DcResistance] = new(
            QuantityKey.DcResistance,
            "Ω",
            "length × ρ·4/(π·d²) × (1 + stretch) × (1 + α·(T − 20 °C)), d without enamel",
            Iec60028
        ),
        [CoilResult.AirInductance] = new(
            QuantityKey.AirInductance,
            "H",
            "N² × mean mutual inductance of two turns of the section",
            Neumann
        ),
        [CoilResult.Inductance] = new(
            "inductance",
            "H",
            "air inductance + µ0·flux of the charges on the cores, at 1 kHz",
            "surface charge on the cores, docs/theory.md"
        ),
        [CoilResult.Capacitance] = new(
            "capacitance",
            "F",
            "Σ over touching turns i, j: capacitance per metre × mean turn × ((i − j)/N)²",
            "lay simulation, docs/theory.md"
        ),
    };

    public static readonly IReadOnlyDictionary<PickupResult, Formula> Pickup = new Dictionary<PickupResult, Formula>
    {
        [PickupResult.DcResistance] = new(QuantityKey.DcResistance, "Ω", "coils joined: sum in series, 1/Σ(1/R) in parallel", Arithmetic),
        [PickupResult.Inductance] = new(
            "inductance",
            "H",
            "imaginary part of the joined coils' impedance ÷ 2πf at 1 kHz, mutual inductance by winding signs",
            Neumann
        ),
        [PickupResult.Capacitance] = new("capacitance", "F", "windings + leads + metal + between the coils", Energy),
        [PickupResult.WindingCapacitance] = new(
            QuantityKey.WindingCapacitance,
            "F",
            "Σ each coil's own, with the air round it, × (its share of the voltage)²",
            Energy
        ),
        [PickupResult.LeadCapacitance] = new(
            QuantityKey.LeadCapacitance,
            "F",
            "length × Σ capacitance per metre × (voltage between)²",
            "from memory where the recipe states none, docs/theory.md"
        ),
        [PickupResult.MetalCapacitance] = new(
            QuantityKey.GroundedCapacitance,
            "F",
            "Σ ∫ c·(v − u)² from the winding to poles, magnets, plates and covers",
            Energy
        ),
        [PickupResult.BetweenCapacitance] = new(QuantityKey.BetweenCoils, "F", "Σ c·(difference of the outer layers' voltages)²", Energy),
        [PickupResult.UnloadedFrequency] = new(
            "frequency",
            "Hz",
            "highest point of the bare response, found on the curve",
            "exact network, docs/theory.md"
        ),
        [PickupResult.UnloadedGain] = new("gain", "dB", "height of that point over 20 Hz", "exact network, docs/theory.md"),
        [PickupResult.UnloadedQ] = new(
            "q",
            "1",
            "√(M·(M + √(M² − 1))/2), M the peak's height as a ratio: the quality of the two-pole low-pass with that peak",
            "exact network, docs/theory.md"
        ),
        [PickupResult.LoadedFrequency] = new(
            "frequency",
            "Hz",
            "highest point of the response on this load, found on the curve",
            "exact network, docs/theory.md"
        ),
        [PickupResult.LoadedGain] = new("gain", "dB", "height of that point over 20 Hz", "exact network, docs/theory.md"),
        [PickupResult.LoadedQ] = new(
            "q",
            "1",
            "√(M·(M + √(M² − 1))/2), M the peak's height as a ratio: the quality of the two-pole low-pass with that peak",
            "exact network, docs/theory.md"
        ),
        [PickupResult.Coupling] = new(QuantityKey.Coupling, "1", "M ÷ √(L1·L2), by the coils' own winding signs", Neumann),
        [PickupResult.Impedance] = new(
            QuantityKey.Impedance,
            "Ω",
            "|R + jωL| ÷ |1 + jωC·(R + jωL)| at 1 kHz, loss and cores as in the inductance",
            Arithmetic
        ),
        [PickupResult.PeakImpedance] = new(
            QuantityKey.PeakImpedance,
            "Ω",
            "|Z| ÷ |1 + jωC·Z| at the unloaded resonance, Z of the coils with their cores",
            Arithmetic
        ),
        [PickupResult.EffectiveArea] = new(
            "effectiveArea",
            "m²",
            "turns × area with the cores, signed by winding direction",
            "docs/theory.md"
        ),
        [PickupResult.GradientX] = new(
            QuantityKey.GradientX,
            "m³",
            "Σ areas × place + Σ charges of the cores per ampere × potential of a field with dBz/dx = 1, zero in the recipe's origin",
            "by reciprocity, docs/theory.md"
        ),
        [PickupResult.GradientY] = new(
            QuantityKey.GradientY,
            "m³",
            "Σ areas × place + Σ charges of the cores per ampere × potential of a field with dBz/dy = 1, zero in the recipe's origin",
            "by reciprocity, docs/theory.md"
        ),
        [PickupResult.GradientZ] = new(
            QuantityKey.GradientZ,
            "m³",
            "Σ areas × place + Σ charges of the cores per ampere × potential of a field with dBz/dz = 1, zero in the recipe's origin",
            "by reciprocity, docs/theory.md"
        ),
        [PickupResult.HumBalance] = new("humBalance", "1", "Σ areas ÷ Σ |areas|", "docs/theory.md"),
    };

    public static readonly IReadOnlyDictionary<StringResult, Formula> String = new Dictionary<StringResult, Formula>
    {
        [StringResult.Linkage] = new(
            QuantityKey.Linkage,
            "Wb",
            "µ0·N·∫ M·h dV over the string, h the winding's field per ampere and turn",
            "saturating wire by reciprocity, docs/theory.md"
        ),
        [StringResult.Sensitivity] = new(
            QuantityKey.Sensitivity,
            "V·s/m",
            "−d linkage / d height: volts per metre a second of the string up and down",
            "saturating wire by reciprocity, docs/theory.md"
        ),
        [StringResult.Field] = new(
            QuantityKey.FieldAtStrings,
            "T",
            "vertical flux density of the magnets on the string's axis where it is strongest, north up positive",
            "surface charge, docs/theory.md"
        ),
    };

    public static Formula PoleField(double jigM) =>
        new(
            QuantityKey.PoleField,
            "T",
            FormattableString.Invariant(
                $"vertical flux density of the magnets {jigM * 1e3:0.###} mm over the pole's own top, north up positive"
            ),
            "surface charge, docs/theory.md"
        );

    public static readonly Formula HumResidual = new(
        QuantityKey.HumResidual,
        "dB",
        "20·log10 |Σ areas| ÷ Σ |areas|, areas with their winding signs; −120 dB stands for less than one part in a million",
        "docs/theory.md"
    );

    public static Formula Spectrum(bool inductance) =>
        inductance
            ? new("inductance", "H", "imaginary part of the joined coils' impedance ÷ 2πf", Neumann)
            : new(
                "resistance",
                "Ω",
                "real part of the joined coils' impedance, the winding's DC resistance included",
                "complex permeability of a long cylinder, docs/theory.md"
            );
}
