using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Originals;

/// <summary>One possible winding of the original, with the logarithm of its weight before the cores are looked at.</summary>
internal readonly record struct PossibleWinding(double Turns, double BareM, double OverallM, double BuildM, double MeanTurnM, double WireMassKg, double OhmPerM, double CapacitanceF, double CoreDeviations, double LogWeight)
{
    public bool IsPossible => double.IsFinite(LogWeight);
}

/// <summary>Draws windings of one wire that give the resistance read.</summary>
/// <remarks>
/// Diameters come from the standard's limits, narrowed at once by readings of them (product of two normals); turns from the resistance drawn about its reading,
/// solved through the winding; every other reading weighs the draw. Priors, our assumptions: turns even in their logarithm from 1,000 to 15,000 with soft ends,
/// packing, stretch and capacitance as in a forecast.
/// </remarks>
internal sealed class OriginalDraw
{
    private const double FewestUsual = 1000;
    private const double MostUsual = 15_000;

    /// <summary>How sharply a winding must fit its room, as a part of it: flanges bend and builds are read from drawings.</summary>
    private const double RoomSoftness = 0.02;

    private readonly PickupModel _model;
    private readonly WireHypothesis _wire;
    private readonly CoilModel _coil;
    private readonly double _resistanceShare;
    private readonly Dictionary<string, OriginalReading[]> _readings;

    public OriginalDraw(PickupModel model, WireHypothesis wire, IReadOnlyList<OriginalReading> readings)
    {
        (_model, _wire) = (model, wire);
        _coil = model.Coils[0] with { Wire = wire.Model };
        _readings = readings.GroupBy(reading => reading.Quantity).ToDictionary(group => group.Key, group => group.ToArray(), StringComparer.Ordinal);
        int coils = model.Coils.Count;
        _resistanceShare = model.Connection == Connection.Series ? coils : model.Connection == Connection.Parallel ? 1.0 / coils : 1;
    }

    /// <summary>Inputs drawn: resistance or turns, bare, overall, packing, stretch, cores, capacitance.</summary>
    public const int Dimensions = 7;

    public PossibleWinding[] Draw(int samples, int seed, Func<double, double>? henryPerTurn)
    {
        SobolSequence sequence = new(Dimensions, seed);
        (Estimate bare, double bareEvidence) = Narrowed(_wire.Model.BareDiameterM, "bareDiameter");
        (Estimate overall, double overallEvidence) = Narrowed(_wire.Model.OverallDiameterM, "overallDiameter");
        double usualTurns = UsualTurns(henryPerTurn);
        LayEstimate lay = Lay(Math.Clamp(usualTurns, 100, 60_000));
        PossibleWinding[] drawn = new PossibleWinding[samples];
        for (int k = 0; k < samples; k++)
        {
            double[] z = new double[Dimensions];
            for (int d = 0; d < Dimensions; d++)
            {
                z[d] = Normal.InvCDF(0, 1, sequence.At(k, d));
            }

            drawn[k] = One(z, sequence.At(k, 0), bare, overall, lay, bareEvidence + overallEvidence, henryPerTurn);
        }

        return drawn;
    }

    private PossibleWinding One(double[] z, double unit, Estimate bare, Estimate overall, LayEstimate lay, double evidence, Func<double, double>? henryPerTurn)
    {
        double bareM = bare.Value + z[1] * bare.StandardDeviation, overallM = overall.Value + z[2] * overall.StandardDeviation;
        if (overallM < 1.005 * bareM || bareM < 5e-6)
        {
            return new PossibleWinding(0, bareM, overallM, 0, 0, 0, 0, 0, 0, double.NegativeInfinity);
        }

        double packing = Math.Clamp(lay.PackingFactor.Value + z[3] * lay.PackingFactor.StandardDeviation, 0.3, WindingGeometry.HexagonalPacking);
        // Stretch by tension, ±0.5 % as in a forecast.
        double ohmPerM = (1 + z[4] * 0.005 / Estimate.Sigmas95) * (_wire.Model.MeasuredOhmPerM?.Value ?? Physics.Wire.CopperWire.OhmPerM(bareM, 20, _wire.Model.ConductivitySPerM));
        WoundCoil Wind(double turns) => ForecastScene.Wind(_coil, bareM, overallM, Math.Clamp(turns, 2, 5e5), packing, ohmPerM);

        (double turns, double logJacobian) = Turns(z[0], unit, Wind, henryPerTurn);
        WoundCoil wound = Wind(turns);
        double capacitanceF = lay.CapacitanceF.Value * wound.MeanTurnM / _coil.Bobbin.TurnLengthM(wound.BuildM / 2) * Math.Exp(z[6] * Math.Log(LayForecast.CapacitanceFactor95) / Estimate.Sigmas95);
        PossibleWinding possible = new(turns, bareM, overallM, wound.BuildM, wound.MeanTurnM, wound.WireMassKg, ohmPerM, capacitanceF, z[5], evidence + logJacobian + LogUsual(turns) + LogRoom(wound.BuildM));
        return possible with { LogWeight = possible.LogWeight + LogReadings(possible, wound) };
    }

    /// <summary>Turns that give the resistance drawn, else the inductance drawn, else any usual count; and the logarithm of the density's change.</summary>
    private (double Turns, double LogJacobian) Turns(double z, double unit, Func<double, WoundCoil> wind, Func<double, double>? henryPerTurn)
    {
        if (_readings.TryGetValue("dcResistance", out OriginalReading[]? resistance))
        {
            double wanted = (resistance[0].Value + z * resistance[0].Half / Estimate.Sigmas95) / _resistanceShare, turns = wanted / (wind(3000).DcResistanceAt20COhm / 3000);
            for (int round = 0; round < 6; round++)
            {
                turns = Math.Clamp(turns * wanted / wind(turns).DcResistanceAt20COhm, 10, 3e5);
            }

            double slope = Math.Log(wind(1.01 * turns).DcResistanceAt20COhm / wind(turns).DcResistanceAt20COhm) / Math.Log(1.01);
            return (turns, -Math.Log(slope));
        }

        if (_readings.TryGetValue("inductance", out OriginalReading[]? inductance) && henryPerTurn is not null)
        {
            // Drawn three times as wide as the cores leave it; the weights put it right.
            double turns = Math.Sqrt(inductance[0].Value / henryPerTurn(2e-3));
            for (int round = 0; round < 6; round++)
            {
                turns = Math.Sqrt(inductance[0].Value / henryPerTurn(wind(turns).BuildM));
            }

            double width = 0.25;
            return (turns * Math.Exp(width * z), z * z / 2);
        }

        return (FewestUsual / 2 * Math.Pow(2.5 * MostUsual / FewestUsual, unit), 0);
    }

    private double UsualTurns(Func<double, double>? henryPerTurn)
    {
        double bareM = _wire.Model.BareDiameterM.Value, overallM = _wire.Model.OverallDiameterM.Value, ohmPerM = Physics.Wire.CopperWire.OhmPerM(bareM, 20, _wire.Model.ConductivitySPerM);
        return Turns(0, 0.5, turns => ForecastScene.Wind(_coil, bareM, overallM, Math.Clamp(turns, 2, 5e5), 0.77, ohmPerM), henryPerTurn).Turns;
    }

    private LayEstimate Lay(double turns)
    {
        double bareM = _wire.Model.BareDiameterM.Value, overallM = _wire.Model.OverallDiameterM.Value;
        double buildM = turns * Math.PI / 4 * overallM * overallM / (0.77 * _coil.Bobbin.WindingHeightM);
        return LayForecast.Quick(bareM, overallM, _wire.Model.EnamelPermittivity.Value, _model.GapPermittivity, _coil.Bobbin.WindingHeightM, _coil.Bobbin.TurnLengthM(buildM / 2), turns, _coil.Winding.Lay, _coil.Winding.PitchM, _coil.Winding.JitterM);
    }

    /// <summary>A diameter with the readings of it: the product of the normals, and the logarithm of how well they agree.</summary>
    private (Estimate Narrowed, double LogEvidence) Narrowed(Estimate limits, string quantity)
    {
        double value = limits.Value, deviation = limits.StandardDeviation, evidence = 0;
        foreach (OriginalReading reading in _readings.GetValueOrDefault(quantity) ?? [])
        {
            double other = reading.Half / Estimate.Sigmas95, both = deviation * deviation + other * other;
            evidence -= (reading.Value - value) * (reading.Value - value) / (2 * both) + Math.Log(both) / 2;
            value += (reading.Value - value) * deviation * deviation / both;
            deviation *= other / Math.Sqrt(both);
        }

        return (Estimate.FromDeviation(value, deviation, Basis.Forecast), evidence);
    }

    private double LogReadings(in PossibleWinding possible, WoundCoil wound)
    {
        double sum = Log("build", possible.BuildM) + Log("meanTurnLength", possible.MeanTurnM) + Log("wireMass", possible.WireMassKg * _model.Coils.Count) + Log("resistancePerLength", possible.OhmPerM)
            + Log("outerLength", wound.OuterLengthM) + Log("outerWidth", wound.OuterWidthM) + Log("turns", possible.Turns);
        int parallel = _model.Connection == Connection.Parallel ? _model.Coils.Count : 1;
        return sum + Log("capacitance", possible.CapacitanceF * parallel / (_model.Connection == Connection.Series ? _model.Coils.Count : 1)) + Others("dcResistance", wound.DcResistanceAt20COhm * _resistanceShare);
    }

    private double Log(string quantity, double value) => _readings.TryGetValue(quantity, out OriginalReading[]? readings) ? readings.Sum(reading => OriginalFinder.LogNormalOf(reading, value)) : 0;

    /// <summary>Readings after the first, which the turns were drawn from.</summary>
    private double Others(string quantity, double value) => _readings.TryGetValue(quantity, out OriginalReading[]? readings) ? readings.Skip(1).Sum(reading => OriginalFinder.LogNormalOf(reading, value)) : 0;

    private static double LogUsual(double turns)
    {
        double outside = turns < FewestUsual ? Math.Log(FewestUsual / turns) : turns > MostUsual ? Math.Log(turns / MostUsual) : 0;
        return -outside * outside / (2 * 0.25 * 0.25);
    }

    private double LogRoom(double buildM)
    {
        double over = _coil.Bobbin.MaxBuildM is { } roomM ? Math.Max(0, buildM / roomM - 1) : 0;
        return -over * over / (2 * RoomSoftness * RoomSoftness);
    }
}
