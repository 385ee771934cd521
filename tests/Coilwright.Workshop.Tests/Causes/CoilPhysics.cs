using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Causes;

/// <summary>What a coil is: its ohms at 20 °C, and henries and losses at the frequencies it is read at.</summary>
internal sealed record Coil(double Ohm, double HenryLow, double HenryHigh, double LossLow, double LossHigh, double Farad);

/// <summary>Coils of one recipe with other turns, cores and gauges, from the forecast model itself; interpolated in logarithms.</summary>
internal sealed class CoilPhysics
{
    public const double LowHz = 1000,
        HighHz = 3000;

    private static readonly double[] s_turns = [0.09, 0.2, 0.45, 0.7, 0.85, 0.95, 1, 1.05, 1.15, 1.4, 2.1];
    private static readonly double s_gauge = Math.Pow(92, -1.0 / 39);
    private readonly Coil[] _byTurns;

    public CoilPhysics(Recipe recipe, int coil)
    {
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        CoilModel own = model.Coils[coil];
        Coil Of(CoilModel changed) => Forecast(model with { Coils = [changed], Connection = Connection.Single });
        Turns = own.Winding.Turns;
        _byTurns = [.. s_turns.Select(part => Of(own with { Winding = own.Winding with { Turns = part * Turns } }))];
        Good = _byTurns[Array.IndexOf(s_turns, 1)];
        OneGauge = Of(Thinner(own, 1));
        HalfGauge = Of(Thinner(own, 0.5));
        Coil[] cores =
        [
            Of(own with { Poles = [] }),
            Of(own with { Poles = [.. own.Poles.Select(pole => PoleOf(pole, 4, 2e6))] }),
            Of(own with { Poles = [.. own.Poles.Select(pole => PoleOf(pole, 100, 6e6))] }),
        ];
        WrongCores = [.. cores.Where(core => Math.Abs(Math.Log(core.HenryLow / Good.HenryLow)) > 0.05)];
    }

    public double Turns { get; }

    public Coil Good { get; }

    public Coil OneGauge { get; }

    public Coil HalfGauge { get; }

    public IReadOnlyList<Coil> WrongCores { get; }

    /// <summary>The coil with a part of its turns.</summary>
    public Coil WithTurns(double part)
    {
        int right = Math.Clamp(Array.FindIndex(s_turns, turns => turns >= part), 1, s_turns.Length - 1);
        double share = Math.Log(part / s_turns[right - 1]) / Math.Log(s_turns[right] / s_turns[right - 1]);
        double Between(Func<Coil, double> of) =>
            Math.Exp((1 - share) * Math.Log(of(_byTurns[right - 1])) + share * Math.Log(of(_byTurns[right])));
        return new Coil(
            Between(one => one.Ohm),
            Between(one => one.HenryLow),
            Between(one => one.HenryHigh),
            Between(one => Math.Max(1e-3, one.LossLow)),
            Between(one => Math.Max(1e-3, one.LossHigh)),
            Between(one => one.Farad)
        );
    }

    private static PoleModel PoleOf(PoleModel pole, double permeability, double conductivity) =>
        pole with
        {
            RelativePermeability = Estimate.Exact(permeability),
            ConductivitySPerM = Estimate.Exact(conductivity),
        };

    private static CoilModel Thinner(CoilModel coil, double steps)
    {
        double by = Math.Pow(s_gauge, steps);
        Estimate Scaled(Estimate size) => Estimate.Exact(size.Value * by);
        return coil with
        {
            Wire = coil.Wire with
            {
                BareDiameterM = Scaled(coil.Wire.BareDiameterM),
                OverallDiameterM = Scaled(coil.Wire.OverallDiameterM),
                MeasuredOhmPerM = null,
            },
        };
    }

    private static Coil Forecast(PickupModel model)
    {
        PickupForecast said = Forecaster
            .Predict(model, load: null, new ForecastOptions { FrequenciesHz = [LowHz, HighHz], Strings = false })
            .Pickup;
        double dc = said.DcResistance.Value;
        return new Coil(
            dc,
            said.Spectrum[0].Inductance.Value,
            said.Spectrum[1].Inductance.Value,
            Math.Max(1e-3, said.Spectrum[0].Resistance.Value - dc),
            Math.Max(1e-3, said.Spectrum[1].Resistance.Value - dc),
            (said.CapacitanceShares?.Winding ?? said.Capacitance).Value
        );
    }
}
