using System.Numerics;
using Coilwright.Analysis.Forecasts.Sizes;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Electrostatics;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Forecasts;

/// <summary>A pickup solved once at the middle of its inputs: what every perturbed evaluation starts from.</summary>
internal sealed class ForecastScene
{
    /// <summary>Density of the enamel, kg/m³: 1,200, read for one resin; its share of the mass is about 3 %.</summary>
    public const double EnamelDensity = 1200;

    public const int FastSegments = 60;
    private const int AccurateSegments = 120;

    /// <summary>
    /// Frequencies that the response is drawn from, whatever others are asked for, so that a recipe has one peak; sparse, since L(f) and
    /// R(f) are smooth.
    /// </summary>
    private static readonly double[] CurveHz = [20, 120, 1_000, 3_000, 7_000, 10_000, 20_000];

    /// <summary>The same where covers and plates make the loss rise with the square of the frequency and level off.</summary>
    private static readonly double[] SheetCurveHz = [20, 120, 400, 1_000, 2_000, 3_000, 5_000, 7_000, 10_000, 14_000, 20_000];

    private readonly Lazy<SizeRates> _rates;

    public ForecastScene(PickupModel model, ForecastOptions options, CancellationToken cancel)
    {
        Model = model;
        _rates = new Lazy<SizeRates>(() => SizeRates.Of(this, cancel));
        Lays = [.. model.Coils.Select(coil => QuickLay(model, coil))];
        Wound = [.. model.Coils.Select((coil, c) => WoundOf(coil, Lays[c]))];
        FrequenciesHz = FrequenciesOf(model, options);
        CurvePlaces =
        [
            .. FrequenciesHz.Index().Where(place => CurveFrequenciesOf(model).Contains(place.Item)).Select(place => place.Index),
        ];
        Field = options.Engine.Solve(ProblemOf(model, Wound, FrequenciesHz), cancel);
        double[] drops = DropsOf(model, Field.StaticInductanceH);
        Stray = StrayCapacitance.Compute(model, [.. Wound.Select(wound => wound.BuildM)], drops);
        Leads = LeadsOf(model, drops);
        int segments = options.Engine is AccurateFieldEngine ? AccurateSegments : FastSegments;
        Strings = options.Strings
            ? StringsOver.Solve(model, Field, [.. Wound.Select(wound => wound.DcResistanceOhm(model.TemperatureC))], segments, cancel)
            : null;
        Poles = options.Strings && options.JigM is { } jigM ? PolesOver.Compute(model, Field, jigM) : null;
    }

    /// <summary>The field over the poles; null when not asked for, or without magnets.</summary>
    public PolesOver? Poles { get; }

    /// <summary>The strings over the pickup; null without.</summary>
    public StringsOver? Strings { get; }

    public PickupModel Model { get; }

    /// <summary>What the pickup's lengths do to the field; solved when the first of them leaves its middle.</summary>
    public SizeRates Rates => _rates.Value;

    public IReadOnlyList<LayEstimate> Lays { get; }
    public IReadOnlyList<WoundCoil> Wound { get; }
    public IReadOnlyList<double> FrequenciesHz { get; }

    /// <summary>Places of the frequencies that the response is drawn from.</summary>
    public IReadOnlyList<int> CurvePlaces { get; }
    public FieldSolution Field { get; }

    /// <summary>What lies across the pickup's wires beside windings and leads, at the middle of the inputs.</summary>
    public StrayEstimate Stray { get; }

    /// <summary>What the leads add across the pickup's wires, F; null where every coil's measured capacitance has them.</summary>
    public Estimate? Leads { get; }

    /// <summary>Share of each coil in the voltage of coils in series, from their inductance matrix.</summary>
    public static double[] Drops(double[,] inductanceH, double[] weights)
    {
        int coils = weights.Length;
        double[] drops = [.. Enumerable.Range(0, coils).Select(i => Enumerable.Range(0, coils).Sum(j => weights[j] * inductanceH[i, j]))];
        double total = drops.Sum();
        return [.. drops.Select(drop => drop / total)];
    }

    /// <summary>One coil at the middle of its inputs.</summary>
    public static WoundCoil WoundOf(PickupModel model, int coil) => WoundOf(model.Coils[coil], QuickLay(model, model.Coils[coil]));

    /// <summary>Frequencies that a forecast needs the field at, Hz.</summary>
    public static IReadOnlyList<double> FrequenciesOf(PickupModel model, ForecastOptions options) =>
        [.. CurveFrequenciesOf(model).Concat(options.FrequenciesHz).Distinct().Order()];

    /// <summary>Frequencies that a model's response is drawn from, Hz.</summary>
    public static IReadOnlyList<double> CurveFrequenciesOf(PickupModel model) => model.Sheets.Count > 0 ? SheetCurveHz : CurveHz;

    /// <summary>The field problem of wound coils.</summary>
    public static FieldProblem ProblemOf(PickupModel model, IReadOnlyList<WoundCoil> wound, IReadOnlyList<double> frequenciesHz) =>
        new([.. model.Coils.Select((coil, c) => FieldCoilOf(coil, wound[c].BuildM))], model.Bars, model.Sheets, frequenciesHz);

    public static double OhmPerM(CoilModel coil, double bareDiameterM) =>
        coil.Wire.MeasuredOhmPerM?.Value ?? CopperWire.OhmPerM(bareDiameterM, 20, coil.Wire.ConductivitySPerM);

    public static WoundCoil Wind(CoilModel coil, double bareM, double overallM, double turns, double packing, double ohmPerM) =>
        WindingGeometry.Wind(coil.Bobbin, bareM, overallM, coil.Winding with { Turns = turns }, packing, ohmPerM, EnamelDensity);

    /// <summary>The pickup's series branch at the asked frequencies: connection of the coils' impedance matrix, Ω.</summary>
    /// <param name="resistanceOhm">DC resistance of each coil.</param>
    /// <param name="inductanceH">Element of the inductance matrix at a frequency's place, losses in its imaginary part.</param>
    public Complex[] Branch(double[] resistanceOhm, Func<int, int, int, Complex> inductanceH)
    {
        Complex[] branch = new Complex[FrequenciesHz.Count];
        for (int k = 0; k < branch.Length; k++)
        {
            Complex jOmega = new(0, 2 * Math.PI * FrequenciesHz[k]);
            int place = k;
            branch[k] = CoilNetwork.Join(Model.Connection, resistanceOhm.Length, (i, j) =>
                jOmega * inductanceH(place, i, j) + (i == j ? resistanceOhm[i] : 0)
            );
        }

        return branch;
    }

    /// <summary>
    /// Element of the inductance matrix at a frequency's place with the sheets' conductivities changed by so much of themselves, H.
    /// </summary>
    public Complex ElementH(double[] conductivityChange, int k, int i, int j)
    {
        Complex element = Field.SpectrumH[k][i, j];
        for (int s = 0; s < conductivityChange.Length; s++)
        {
            element += conductivityChange[s] * Field.SheetEffects[s].ByConductivityH[k][i, j];
        }

        return element;
    }

    private static WoundCoil WoundOf(CoilModel coil, LayEstimate lay) =>
        Wind(
            coil,
            coil.Wire.BareDiameterM.Value,
            coil.Wire.OverallDiameterM.Value,
            coil.Winding.Turns,
            lay.PackingFactor.Value,
            OhmPerM(coil, coil.Wire.BareDiameterM.Value)
        );

    /// <summary>Share of each coil in the pickup's voltage: by inductance in series, all of it side by side.</summary>
    private static double[] DropsOf(PickupModel model, double[,] inductanceH)
    {
        double[] ones = [.. Enumerable.Repeat(1.0, model.Coils.Count)];
        return model.Connection == Connection.Series && ones.Length > 1 ? Drops(inductanceH, ones) : ones;
    }

    /// <summary>
    /// A measured capacitance was read at wires of some length: leads that no recipe names are in it, those it names come on top.
    /// </summary>
    private static Estimate? LeadsOf(PickupModel model, double[] drops) =>
        model.Leads is null && model.Coils.All(coil => coil.Winding.MeasuredCapacitanceF is not null)
            ? null
            : LeadCapacitance.AtTerminals(model.Leads, model.Connection, drops, StrayCapacitance.HasScreenedLead(model));

    /// <summary>
    /// What the lay makes of a window of another height: what is added to the packing, and by what the capacitance per length of the turns
    /// is multiplied.
    /// </summary>
    public static (double PackingBy, double CapacitanceTimes) LayChange(PickupModel model, CoilModel here, CoilModel there)
    {
        LayEstimate from = QuickLay(model, here),
            to = QuickLay(model, Open(there));
        return (
            to.PackingFactor.Value - from.PackingFactor.Value,
            to.CapacitanceF.Value / from.CapacitanceF.Value * RoughTurnM(here) / RoughTurnM(there)
        );
    }

    /// <summary>However low a rare draw makes the window, the lay is that of three wires.</summary>
    private static CoilModel Open(CoilModel coil) =>
        coil with
        {
            Bobbin = coil.Bobbin with
            {
                WindingHeightM = Math.Max(coil.Bobbin.WindingHeightM, LayForecast.LeastWires * coil.Wire.OverallDiameterM.Value),
            },
        };

    private static double RoughTurnM(CoilModel coil)
    {
        double overallM = coil.Wire.OverallDiameterM.Value,
            areaM2 = coil.Winding.Turns * Math.PI / 4 * overallM * overallM;
        return coil.Bobbin.TurnLengthM((coil.Winding.MeasuredBuildM ?? areaM2 / (0.77 * coil.Bobbin.WindingHeightM)) / 2);
    }

    private static LayEstimate QuickLay(PickupModel model, CoilModel coil)
    {
        WireModel wire = coil.Wire;
        WindingModel winding = coil.Winding;
        double overallM = wire.OverallDiameterM.Value;
        return LayForecast.Quick(
            wire.BareDiameterM.Value,
            overallM,
            wire.EnamelPermittivity.Value,
            model.GapPermittivity,
            coil.Bobbin.WindingHeightM,
            RoughTurnM(coil),
            winding.Turns,
            winding.Lay,
            winding.PitchM,
            winding.JitterM
        );
    }

    private static FieldCoil FieldCoilOf(CoilModel coil, double buildM) =>
        new(
            coil.Bobbin,
            buildM,
            coil.Winding.Turns,
            coil.Winding.Direction == WindingDirection.CounterClockwise ? 1 : -1,
            coil.Position,
            coil.Poles
        );
}
