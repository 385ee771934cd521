using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Electrostatics;
using Coilwright.Physics.Sizes;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;
using Coilwright.Shared;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Tests.Uncertainty;

public sealed class CoverageTests
{
    private const int Shops = 1000;

    /// <summary>What the quick engine states of its own error in the cores' share (95 %): the truth differs from it by as much.</summary>
    private const double FastEngineError = 0.025;

    /// <summary>The same of the field over a pole, and how well a jig's distance is known, m.</summary>
    private const double FastPoleError = 0.008,
        JigErrorM = 5e-5;
    private static readonly LoadCircuit s_load = new()
    {
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
        Volume = new(500e3, 1),
    };

    /// <summary>
    /// A thousand shops wind the same recipe. Each has its own wire, lay, counter, tension, magnets, enamel and lengths of bobbin and
    /// poles, drawn from what the forecast states of them; what it would measure comes from the whole
    /// physics at its own values, the field solved anew. The forecast was made without knowing them.
    /// </summary>
    [Fact]
    public void Intervals_of_95_per_cent_hold_what_93_to_97_of_100_shops_measure()
    {
        PickupModel recipe = Pickups.Sized(Pickups.Single());
        Prediction forecast = Forecaster.Predict(recipe, s_load, cancel: TestContext.Current.CancellationToken);
        Figure[] stated = [.. Figures(forecast)];
        int[] held = new int[stated.Length];
        Random random = new(7),
            gauss = new(11),
            leads = new(13),
            calipers = new(17);
        double Off(double half95) => half95 / Estimate.Sigmas95 * Normal.Sample(gauss, 0, 1);
        (PickupModel Model, double FieldError, double Magnets, double JigM, double PoleError)[] shops =
        [
            .. Enumerable
                .Range(0, Shops)
                .Select(_ =>
                    (
                        Shop(Came(recipe, calipers), random, leads),
                        FastEngineError / Estimate.Sigmas95 * Normal.Sample(random, 0, 1),
                        Off(Strength(recipe)),
                        1e-3 + Off(JigErrorM),
                        Off(FastPoleError)
                    )
                ),
        ];
        Parallel.ForEach(shops, shop =>
        {
            Prediction whole = Forecaster.Predict(
                Magnetised(shop.Model, shop.Magnets),
                s_load,
                new ForecastOptions { JigM = shop.JigM },
                TestContext.Current.CancellationToken
            );
            double airH = whole.Coils[0].AirInductance.Value;
            double Measured(Figure figure) =>
                figure.Name switch
                {
                    "inductance" => figure.Value + shop.FieldError * (figure.Value - airH),
                    "gradientZ" => figure.Value * (1 + shop.FieldError), // the cores alone: the winding stands about the origin
                    "poleField" => figure.Value * (1 + shop.PoleError),
                    _ => figure.Value,
                };
            double[] measured = [.. Figures(whole).Select(Measured)];
            for (int k = 0; k < stated.Length; k++)
            {
                if (measured[k] >= stated[k].Estimate.Low && measured[k] <= stated[k].Estimate.High)
                {
                    Interlocked.Increment(ref held[k]);
                }
            }
        });
        int[] uncertain = [.. Enumerable.Range(0, stated.Length).Where(k => !stated[k].Estimate.IsExact)];
        string[] told =
        [
            .. uncertain.Select(k => string.Create(CultureInfo.InvariantCulture, $"{stated[k].Name} {held[k] * 100.0 / Shops:F1} %")),
        ];
        Assert.InRange(uncertain.Length, 20, 60);
        Assert.True(uncertain.All(k => held[k] is >= 930 and <= 970), string.Join("; ", told));
        Evidence check = Evidence.Own(
            "Coverage of the 95 % intervals over 1,000 simulated shops",
            "simulation with known truth, the field solved anew in each",
            "chance: 2.9 standard errors of 1,000 shops",
            "coverage"
        );
        Assert.All(uncertain, k => check.Inside(100.0 * held[k] / Shops, 93, 97, "%", stated[k].Name));
        check.Record();
    }

    /// <summary>Half-width of the logarithm of the magnets' strength, as the forecast states it.</summary>
    private static double Strength(PickupModel recipe)
    {
        Estimate source = recipe.Coils[0].Poles[0].PolarisationT;
        return Math.Log(1 + (source.High - source.Low) / 2 / source.Value);
    }

    private static PickupModel Magnetised(PickupModel shop, double strength)
    {
        PoleModel pole = shop.Coils[0].Poles[0];
        return shop with
        {
            Coils =
            [
                shop.Coils[0] with
                {
                    Poles = [pole with { PolarisationT = Estimate.Exact(pole.PolarisationT.Value * Math.Exp(strength)) }],
                },
            ],
        };
    }

    private static IEnumerable<Figure> Figures(Prediction prediction) =>
        prediction
            .Coils.SelectMany(coil => coil.All)
            .Concat(prediction.Pickup.All)
            .Concat(prediction.Pickup.Spectrum.SelectMany(line => new[] { line.Inductance, line.Resistance }));

    /// <summary>The pickup as its parts came out: every length drawn from its interval.</summary>
    private static PickupModel Came(PickupModel recipe, Random calipers) =>
        recipe.Sizes.Aggregate(recipe, (model, size) =>
            SizeMoves.Move(model, size, size.Estimate.StandardDeviation * Normal.Sample(calipers, 0, 1))
        ) with
        {
            Sizes = [],
        };

    private static PickupModel Shop(PickupModel recipe, Random random, Random leads)
    {
        double Z() => Normal.Sample(random, 0, 1);
        double Lead() => Normal.Sample(leads, 0, 1);
        CoilModel coil = recipe.Coils[0];
        WireModel wire = coil.Wire;
        double bareM = wire.BareDiameterM.Value + Z() * wire.BareDiameterM.StandardDeviation,
            overallM = Math.Max(1.001 * bareM, wire.OverallDiameterM.Value + Z() * wire.OverallDiameterM.StandardDeviation);
        double turns = coil.Winding.Turns * (1 + Z() * 0.002 / Estimate.Sigmas95),
            stretch = 1 + Z() * 0.005 / Estimate.Sigmas95;
        LayEstimate lay = LayForecast.Quick(
            wire.BareDiameterM.Value,
            wire.OverallDiameterM.Value,
            wire.EnamelPermittivity.Value,
            recipe.GapPermittivity,
            coil.Bobbin.WindingHeightM,
            coil.Bobbin.TurnLengthM(1.8e-3),
            coil.Winding.Turns,
            coil.Winding.Lay,
            coil.Winding.PitchM,
            coil.Winding.JitterM
        );
        double packing = Math.Min(0.9, lay.PackingFactor.Value + Z() * lay.PackingFactor.StandardDeviation);
        double buildM = turns * CopperWire.AreaM2(overallM) / (packing * coil.Bobbin.WindingHeightM);
        Estimate mu = coil.Poles[0].RelativePermeability;
        double middleBuildM =
            coil.Winding.Turns * CopperWire.AreaM2(wire.OverallDiameterM.Value) / (lay.PackingFactor.Value * coil.Bobbin.WindingHeightM);
        double capacitanceF =
            lay.CapacitanceF.Value
            * coil.Bobbin.TurnLengthM(buildM / 2)
            / coil.Bobbin.TurnLengthM(middleBuildM / 2)
            * (coil.Bobbin.TurnLengthM(middleBuildM / 2) / coil.Bobbin.TurnLengthM(1.8e-3))
            * Math.Exp(Z() * Math.Log(LayForecast.CapacitanceFactor95) / Estimate.Sigmas95);
        StrayEstimate stray = StrayCapacitance.Compute(recipe, [buildM], [1]);
        Estimate usual = LeadCapacitance.AtTerminals(null, Connection.Single, [1], StrayCapacitance.HasScreenedLead(recipe));
        // A measured coil has its own metal in it: what the recipe leaves unsaid comes with the leads here.
        double leadsF =
            usual.Value * Math.Exp(Lead() * Math.Log(usual.High / usual.Low) / 2 / Estimate.Sigmas95)
            + Math.Max(0, Lead() / Estimate.Sigmas95) * stray.UnsaidF
            + stray.OwnF * capacitanceF / lay.CapacitanceF.Value;
        return recipe with
        {
            Leads = new LeadModel
            {
                Construction = LeadConstruction.UnscreenedPair,
                LengthM = 1,
                BetweenFPerM = leadsF,
            },
            Coils =
            [
                coil with
                {
                    Wire = wire with
                    {
                        BareDiameterM = Estimate.Exact(bareM),
                        OverallDiameterM = Estimate.Exact(overallM),
                        MeasuredOhmPerM = Estimate.Exact(CopperWire.OhmPerM(bareM, 20, wire.ConductivitySPerM) * stretch),
                    },
                    Winding = coil.Winding with { Turns = turns, MeasuredBuildM = buildM, MeasuredCapacitanceF = capacitanceF },
                    Poles =
                    [
                        coil.Poles[0] with
                        {
                            RelativePermeability = Estimate.Exact(Math.Max(1, mu.Value + Z() * mu.StandardDeviation)),
                        },
                    ],
                },
            ],
        };
    }
}
