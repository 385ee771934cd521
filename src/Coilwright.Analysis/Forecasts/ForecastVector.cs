using System.Numerics;
using Coilwright.Analysis.Forecasts.Sizes;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Forecasts;

/// <summary>Places of one coil's results in the vector of all results.</summary>
internal enum CoilResult
{
    TurnsPerLayer,
    Layers,
    Fill,
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
}

/// <summary>Places of the pickup's results behind those of the coils.</summary>
internal enum PickupResult
{
    DcResistance,
    Inductance,
    Capacitance,
    WindingCapacitance,
    LeadCapacitance,
    MetalCapacitance,
    BetweenCapacitance,
    UnloadedFrequency,
    UnloadedGain,
    UnloadedQ,
    LoadedFrequency,
    LoadedGain,
    LoadedQ,
    Coupling,
    EffectiveArea,
    HumBalance,
    GradientX,
    GradientY,
    GradientZ,
    Impedance,
    PeakImpedance,
}

/// <summary>Places of one string's results behind the spectrum.</summary>
internal enum StringResult
{
    Linkage,
    Sensitivity,
    Field,
}

/// <summary>The forecast as one function from input values to result values, so that one mechanism gives every interval.</summary>
internal sealed partial class ForecastVector
{
    private static readonly int CoilResults = Enum.GetValues<CoilResult>().Length;
    private static readonly int PickupResults = Enum.GetValues<PickupResult>().Length;

    /// <summary>
    /// Results that stand for themselves: told under their own names wherever the pickup's figures are told, and left out at zero.
    /// </summary>
    public static readonly IReadOnlyList<PickupResult> Others = [PickupResult.Impedance, PickupResult.PeakImpedance];

    private const double LeastPacking = 0.1;

    /// <summary>What a guess at hot end and grounding leaves of the capacitance to metal.</summary>
    private const double LeastMetal = 0.2;

    /// <summary>What the rarest draws leave of an inductance, and the tightest coupling they may make.</summary>
    private const double LeastSelf = 0.01,
        MostCoupling = 0.999;

    private readonly ForecastScene _scene;
    private readonly ForecastInputs _inputs;
    private readonly LoadCircuit? _load;
    private readonly int _coils;
    private readonly int _oneKilohertz;
    private readonly double[] _resistance;
    private readonly double[] _turnsRatio;
    private readonly double[] _buildChange;
    private readonly double[,] _scale;
    private readonly double[] _sheetChange;
    private readonly double?[] _learnt;
    private readonly SizeShift _sizes;
    private double _cores;
    private PeakPredictor? _bareTrail;
    private PeakPredictor? _loadedTrail;

    public ForecastVector(ForecastScene scene, ForecastInputs inputs, LoadCircuit? load)
    {
        (_scene, _inputs, _load) = (scene, inputs, load);
        _coils = scene.Model.Coils.Count;
        _oneKilohertz = scene.FrequenciesHz.ToList().FindIndex(f => Math.Abs(f - 1000) < 1e-6);
        _resistance = new double[_coils];
        _turnsRatio = new double[_coils];
        _buildChange = new double[_coils];
        _scale = new double[_coils, _coils];
        _sheetChange = new double[inputs.Sheets.Count];
        _learnt = new double?[_coils];
        _sizes = new SizeShift(scene, inputs);
    }

    public int Count => PoleStart + (_scene.Poles?.Answers.Count ?? 0);
    private int PoleStart => StringStart + 3 * (_scene.Strings?.Answers.Count ?? 0);
    private int StringStart => PickupStart + PickupResults + 2 * _scene.FrequenciesHz.Count;
    private int PickupStart => _coils * CoilResults;

    public int PlaceOf(int coil, CoilResult result) =>
        (_coils > coil ? coil : throw new ArgumentOutOfRangeException(nameof(coil))) * CoilResults + (int)result;

    public int PlaceOf(PickupResult result) => PickupStart + (int)result;

    public int PlaceOfSpectrum(int frequency, bool inductance) => PickupStart + PickupResults + 2 * frequency + (inductance ? 0 : 1);

    public int PlaceOf(int index, StringResult result) => StringStart + 3 * index + (int)result;

    /// <summary>Place of the field over a pole.</summary>
    public int PlaceOfPole(int index) => PoleStart + index;

    public Scatter[] Scatters()
    {
        Scatter[] scatters = new Scatter[Count];
        Array.Fill(scatters, Scatter.LogNormal);
        foreach (
            PickupResult signed in (PickupResult[])
                [
                    PickupResult.Coupling,
                    PickupResult.EffectiveArea,
                    PickupResult.HumBalance,
                    PickupResult.GradientX,
                    PickupResult.GradientY,
                    PickupResult.GradientZ,
                ]
        )
        {
            scatters[PlaceOf(signed)] = Scatter.Normal;
        }

        for (PickupResult sum = PickupResult.Capacitance; sum <= PickupResult.BetweenCapacitance; sum++)
        {
            scatters[PlaceOf(sum)] = Scatter.Skewed;
        }

        foreach (PickupResult peak in (PickupResult[])[PickupResult.UnloadedFrequency, PickupResult.LoadedFrequency])
        {
            scatters[PlaceOf(peak)] = Scatter.SkewedLog;
            scatters[PlaceOf(peak + 1)] = Scatter.Skewed;
            scatters[PlaceOf(peak + 2)] = Scatter.SkewedLog;
        }

        return scatters;
    }

    /// <summary>False leaves the resonances out of the results, which is most of the work.</summary>
    public bool SearchPeaks { get; set; } = true;

    /// <summary>Fills the results from the input values.</summary>
    public void Evaluate(double[] x, double[] y)
    {
        _sizes.Take(x);
        for (int c = 0; c < _coils; c++)
        {
            WindOne(c, x, y);
        }

        ScaleInductances(x, y);
        for (int s = 0; s < _sheetChange.Length; s++)
        {
            SheetEffect effect = _scene.Field.SheetEffects[s];
            double thicker = 1 + _sizes.ThicknessBy[effect.Index];
            _sheetChange[s] = x[_inputs.Sheets[s]] / effect.Sheet.ConductivitySPerM.Value * thicker - 1;
        }

        for (int c = 0; c < _coils; c++)
        {
            double ownAir = _scene.Field.AirInductanceH[c, c];
            y[PlaceOf(c, CoilResult.AirInductance)] =
                (ownAir + _scene.Field.AirInductanceByBuildHPerM[c] * _buildChange[c] + _sizes.Field.AirH[c])
                * _turnsRatio[c]
                * _turnsRatio[c];
            y[PlaceOf(c, CoilResult.Inductance)] = ElementH(_oneKilohertz, c, c).Real;
            y[PlaceOf(c, CoilResult.Capacitance)] =
                x[_inputs.Capacitance]
                * (
                    _scene.Model.Coils[c].Winding.MeasuredCapacitanceF
                    ?? _scene.Lays[c].CapacitanceF.Value
                        * _sizes.CapacitanceTimes[c]
                        * y[PlaceOf(c, CoilResult.MeanTurnLength)]
                        / _scene.Wound[c].MeanTurnM
                );
        }

        JoinCoils(x, y);
        OverStrings(x, y);
        OverPoles(x, y);
    }

    /// <summary>
    /// From now on looks for each peak from where it should have gone; for thousands of evaluations about the same middle.
    /// </summary>
    public void FollowPeaks(double[] middle)
    {
        FollowPeaks(null, null);
        double[] y = new double[Count];
        Evaluate(middle, y);
        (_bareTrail, _loadedTrail) = TrailsAt(y);
    }

    /// <summary>The same from where the peaks of another evaluation stood; null searches everywhere.</summary>
    public void FollowPeaks(PeakPredictor? bare, PeakPredictor? loaded) => (_bareTrail, _loadedTrail) = (bare, loaded);

    /// <summary>Where the peaks of an evaluation stand; null for one that is not there.</summary>
    public (PeakPredictor? Bare, PeakPredictor? Loaded) TrailsAt(double[] y)
    {
        PeakPredictor? Trail(PickupResult peak, double? capacitanceF) =>
            y[PlaceOf(peak)] > 0 ? new PeakPredictor(y[PlaceOf(peak)], y[PlaceOf(PickupResult.Inductance)], capacitanceF) : null;
        return (Trail(PickupResult.UnloadedFrequency, y[PlaceOf(PickupResult.Capacitance)]), Trail(PickupResult.LoadedFrequency, null));
    }

    /// <summary>Turns of a coil in a draw; however few are aimed at, a coil has a quarter turn.</summary>
    internal double TurnsOf(int coil, ReadOnlySpan<double> x) => Math.Max(LayForecast.LeastTurns, x[_inputs.Coils[coil].Turns]);

    private void WindOne(int c, double[] x, double[] y)
    {
        CoilModel coil = _sizes.CoilOf(c);
        CoilPlaces places = _inputs.Coils[c];
        double ohmPerM = places.OhmPerM >= 0 ? x[places.OhmPerM] : CopperWire.OhmPerM(x[places.Bare], 20, coil.Wire.ConductivitySPerM);
        // Both diameters scatter on their own; a rare draw may not leave less than a trace of enamel.
        double overallM = Math.Max(x[places.Overall], 1.001 * x[places.Bare]);
        // Nor does any draw pack round wire closer than it can lie.
        double packing = Math.Clamp(x[places.Packing] + _sizes.PackingBy[c], LeastPacking, WindingGeometry.HexagonalPacking);
        double turns = TurnsOf(c, x);
        WoundCoil wound = ForecastScene.Wind(coil, x[places.Bare], overallM, turns, packing, ohmPerM);
        double stretchChange = (1 + x[places.Stretch]) / (1 + coil.Winding.Stretch);
        _resistance[c] = _inputs.Learnt[c].DcResistance is { } learnt
            ? LearntOhm(c, x, learnt, turns)
            : wound.DcResistanceOhm(x[_inputs.Temperature]) * stretchChange;
        _learnt[c] = LearntHenry(c, x);
        _turnsRatio[c] = turns / coil.Winding.Turns;
        _buildChange[c] = wound.BuildM - _scene.Wound[c].BuildM;
        y[PlaceOf(c, CoilResult.TurnsPerLayer)] = wound.TurnsPerLayer;
        y[PlaceOf(c, CoilResult.Layers)] = wound.Layers;
        y[PlaceOf(c, CoilResult.Fill)] = wound.Fill ?? 0;
        y[PlaceOf(c, CoilResult.Build)] = wound.BuildM;
        y[PlaceOf(c, CoilResult.OuterLength)] = wound.OuterLengthM;
        y[PlaceOf(c, CoilResult.OuterWidth)] = wound.OuterWidthM;
        y[PlaceOf(c, CoilResult.MeanTurnLength)] = wound.MeanTurnM;
        y[PlaceOf(c, CoilResult.WireLength)] = wound.WireLengthM;
        y[PlaceOf(c, CoilResult.WireMass)] = wound.WireMassKg;
        y[PlaceOf(c, CoilResult.DcResistance)] = _resistance[c];
    }

    /// <summary>Turns act squared, build through the air part, cores through their interval; mutuals follow turns and cores.</summary>
    private void ScaleInductances(double[] x, double[] y)
    {
        double cores = _cores = _inputs.CoreDeparture(x);
        for (int i = 0; i < _coils; i++)
        {
            for (int j = 0; j < _coils; j++)
            {
                double middle = _scene.Field.StaticInductanceH[i, j];
                double build = i == j ? _scene.Field.AirInductanceByBuildHPerM[i] * _buildChange[i] : 0;
                double core = cores * _scene.Field.InductanceSpreadH[i, j] + _sizes.Field.StaticH[i, j];
                double plain = Math.Abs(middle) > 0 ? (middle + build + core) / middle : 0;
                double learnt = i == j && _learnt[i] is { } factor ? factor : plain * LearntMutual(i, j);
                _scale[i, j] = learnt * _turnsRatio[i] * _turnsRatio[j];
            }
        }
    }

    /// <summary>
    /// Element of the inductance matrix at a frequency's place: the cores move losses and inductance each in its own way.
    /// </summary>
    private Complex ElementH(int k, int i, int j)
    {
        FieldSolution field = _scene.Field;
        if (field.SpectrumSpreadH.Count == 0)
        {
            return _scene.ElementH(_sheetChange, k, i, j) * _scale[i, j];
        }

        Complex middle = _scene.ElementH(_sheetChange, k, i, j);
        double loss = middle.Imaginary * Math.Exp((LossDeparture(k, i) + LossDeparture(k, j)) / 2);
        return new Complex(i == j ? SelfH(k, i) : MutualH(k, i, j, middle.Real), loss) * (_turnsRatio[i] * _turnsRatio[j]);
    }

    /// <summary>A coil's own inductance at its middle turns: cores move its logarithm, so that it stays above nothing.</summary>
    private double SelfH(int k, int coil)
    {
        double middle = _scene.ElementH(_sheetChange, k, coil, coil).Real;
        if (_learnt[coil] is { } learnt)
        {
            return middle * learnt;
        }

        double moved = middle * Math.Exp(_cores * Math.Asinh(_scene.Field.SpectrumSpreadH[k][coil, coil].Real / middle));
        double sized = _sizes.Field.SpectrumH[k][coil, coil];
        return Math.Max(moved + sized + _scene.Field.AirInductanceByBuildHPerM[coil] * _buildChange[coil], LeastSelf * middle);
    }

    /// <summary>What two coils share, with the cores; never more than all but a trace of the root of both.</summary>
    private double MutualH(int k, int i, int j, double middle)
    {
        double most = MostCoupling * Math.Sqrt(SelfH(k, i) * SelfH(k, j));
        double sized = _sizes.Field.SpectrumH[k][i, j];
        double moved = (middle + sized + _cores * _scene.Field.SpectrumSpreadH[k][i, j].Real) * LearntMutual(i, j);
        return Math.Clamp(moved, -most, most);
    }

    /// <summary>
    /// By how much the cores move the logarithm of a coil's loss: as far up and down as its half-width says, and never below nothing.
    /// </summary>
    /// <remarks>
    /// m·e^±a lie 2·m·sinh a apart. Every coil's loss moves by its own factor and what coils share by the root of both, so that a matrix
    /// that takes power everywhere goes on doing so.
    /// </remarks>
    private double LossDeparture(int k, int coil)
    {
        double middle = _scene.Field.SpectrumH[k][coil, coil].Imaginary;
        double cores = Math.Abs(middle) > 0 ? _cores * Math.Asinh(_scene.Field.SpectrumSpreadH[k][coil, coil].Imaginary / middle) : 0;
        return cores + _sizes.Field.LossBy[k][coil];
    }

    private void JoinCoils(double[] x, double[] y)
    {
        Complex[] branch = _scene.Branch(_resistance, ElementH);
        for (int k = 0; k < branch.Length; k++)
        {
            y[PlaceOfSpectrum(k, inductance: true)] = branch[k].Imaginary / (2 * Math.PI * _scene.FrequenciesHz[k]);
            y[PlaceOfSpectrum(k, inductance: false)] = branch[k].Real;
        }

        double[] weights = JoinedDc(y);
        y[PlaceOf(PickupResult.Inductance)] = y[PlaceOfSpectrum(_oneKilohertz, inductance: true)];
        Capacitances(x, y, weights);
        y[PlaceOf(PickupResult.Impedance)] = Complex.Abs(
            PickupImpedance.Ohm(branch[_oneKilohertz], y[PlaceOf(PickupResult.Capacitance)], null, frequencyHz: 1000)
        );
        Hum(y, weights);
        double[,] spectrum = SelfAndMutual();
        y[PlaceOf(PickupResult.Coupling)] = _coils > 1 ? spectrum[0, 1] / Math.Sqrt(spectrum[0, 0] * spectrum[1, 1]) : 0;
        if (SearchPeaks)
        {
            Resonances(y, BranchOf(y));
        }
    }

    private double[,] SelfAndMutual()
    {
        double[,] self = new double[_coils, _coils];
        for (int i = 0; i < _coils; i++)
        {
            for (int j = 0; j < _coils; j++)
            {
                self[i, j] = _scene.Field.StaticInductanceH[i, j] * _scale[i, j];
            }
        }

        return self;
    }

    private double[] JoinedDc(double[] y)
    {
        Complex dc = CoilNetwork.Join(_scene.Model.Connection, _coils, (i, j) => i == j ? _resistance[i] : 0);
        y[PlaceOf(PickupResult.DcResistance)] = dc.Real;
        Complex jOmega = new(0, 2 * Math.PI * 1000);
        return CoilNetwork.Weights(_scene.Model.Connection, _coils, (i, j) =>
            jOmega * ElementH(_oneKilohertz, i, j) + (i == j ? _resistance[i] : 0)
        );
    }

    /// <summary>Everything across the pickup's wires: windings, leads, metal, and from coil to coil.</summary>
    private void Capacitances(double[] x, double[] y, double[] weights)
    {
        StrayPlaces places = _inputs.Stray;
        double walls = places.Walls is { } wall ? x[wall] : 1,
            unsaid = places.Unsaid is { } place ? x[place] * _scene.Stray.UnsaidF : 0,
            metal = _scene.Stray.Metal.Value + _sizes.Field.StrayF.Metal;
        y[PlaceOf(PickupResult.WindingCapacitance)] =
            JoinedCapacitance(y, weights) + x[_inputs.Capacitance] * (_scene.Stray.OwnF + _sizes.Field.StrayF.Own);
        y[PlaceOf(PickupResult.LeadCapacitance)] = places.Leads is { } leads ? x[leads] : 0;
        y[PlaceOf(PickupResult.MetalCapacitance)] = walls * Math.Max(LeastMetal * metal, metal + unsaid);
        y[PlaceOf(PickupResult.BetweenCapacitance)] = walls * Math.Max(0, _scene.Stray.Between.Value + _sizes.Field.StrayF.Between);
        y[PlaceOf(PickupResult.Capacitance)] =
            y[PlaceOf(PickupResult.WindingCapacitance)]
            + y[PlaceOf(PickupResult.LeadCapacitance)]
            + y[PlaceOf(PickupResult.MetalCapacitance)]
            + y[PlaceOf(PickupResult.BetweenCapacitance)];
    }

    /// <summary>Capacitance seen at the terminals by energy: each coil's own times the square of its share of the voltage.</summary>
    private double JoinedCapacitance(double[] y, double[] weights)
    {
        if (_scene.Model.Connection != Connection.Series || _coils == 1)
        {
            return Enumerable
                .Range(0, _coils)
                .Sum(c => _scene.Model.Connection == Connection.Parallel || c == 0 ? y[PlaceOf(c, CoilResult.Capacitance)] : 0);
        }

        double[] drops = ForecastScene.Drops(SelfAndMutual(), weights);
        return Enumerable.Range(0, _coils).Sum(c => y[PlaceOf(c, CoilResult.Capacitance)] * drops[c] * drops[c]);
    }

    private void Resonances(double[] y, TabulatedBranch branch)
    {
        double capacitance = y[PlaceOf(PickupResult.Capacitance)];
        double henry = y[PlaceOf(PickupResult.Inductance)];
        ResonancePeak? bare = Peak(_bareTrail, LoadCircuit.None);
        Put(y, PickupResult.UnloadedFrequency, bare);
        y[PlaceOf(PickupResult.PeakImpedance)] = bare is { FrequencyHz: var hertz }
            ? Complex.Abs(PickupImpedance.Ohm(branch.ImpedanceOhm(hertz), capacitance, null, hertz))
            : 0;
        Put(y, PickupResult.LoadedFrequency, _load is null ? null : Peak(_loadedTrail, _load));

        ResonancePeak? Peak(PeakPredictor? trail, LoadCircuit load) =>
            trail is null
                ? PickupResponse.FindPeak(branch, capacitance, null, load)
                : PickupResponse.FindPeakNear(branch, capacitance, null, load, trail.Guess(henry, capacitance));
    }

    private void Put(double[] y, PickupResult first, ResonancePeak? peak)
    {
        int place = PlaceOf(first);
        y[place] = peak?.FrequencyHz ?? 0;
        y[place + 1] = peak?.GainDb ?? 0;
        y[place + 2] = peak?.Q ?? 0;
    }
}
