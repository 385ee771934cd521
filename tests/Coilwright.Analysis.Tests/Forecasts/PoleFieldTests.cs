using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Analysis.Tests.Forecasts;

/// <summary>What a gauss meter reads over the poles.</summary>
public sealed class PoleFieldTests
{
    private const double Source = 1.1;

    [Theory] // a uniformly magnetised cylinder on its axis: B = Br/2·((d + L)/√((d + L)² + R²) − d/√(d² + R²)), a textbook's closed form
    [InlineData("fast", 0.01)]
    [InlineData("accurate", 0.003)]
    public void One_rod_of_permeability_one_reads_the_closed_form_at_every_distance(string engine, double allowed)
    {
        PickupModel model = Rod(permeability: 1);
        PoleModel pole = model.Coils[0].Poles[0];
        double radius = pole.DiameterM / 2,
            length = pole.LengthM;
        Shared.Evidence check = Shared.Evidence.Outside(
            $"Field over a pole of permeability 1 at 0.5 to 20 mm, {engine} engine",
            "closed form of a uniformly magnetised cylinder on its axis",
            "derived",
            "ratchet: of the cutting; the closed form is exact"
        );
        foreach (double distance in (double[])[5e-4, 1e-3, 1.5e-3, 2e-3, 3e-3, 5e-3, 1e-2, 2e-2])
        {
            double far = distance + length,
                expected =
                    Source
                    / 2
                    * (far / Math.Sqrt(far * far + radius * radius) - distance / Math.Sqrt(distance * distance + radius * radius));
            check.WithinPart(
                Read(model, distance, engine == "fast" ? new FastFieldEngine() : new AccurateFieldEngine())[0].Field.Value,
                expected,
                allowed,
                FormattableString.Invariant($"{distance} m")
            );
        }

        check.Record();
    }

    [Fact]
    public void Each_pole_is_read_over_its_own_top_and_numbered_along_x()
    {
        PickupModel model = Pickups.Single();
        PoleModel pole = model.Coils[0].Poles[0];
        double[] tops = [.. pole.TopsM.Select((top, i) => top + 1e-4 * i)];
        PickupModel stepped = model with
        {
            Coils =
            [
                model.Coils[0] with
                {
                    Poles = [pole with { PositionsM = [.. pole.PositionsM.Reverse()], TopsM = [.. tops.Reverse()] }],
                },
            ],
        };
        IReadOnlyList<PoleForecast> poles = Read(stepped, 2e-3);
        Assert.Equal([1, 2, 3, 4, 5, 6], poles.Select(one => one.Number));
        for (int i = 0; i < 6; i++)
        {
            Assert.Equal(pole.PositionsM[i], poles[i].AtM.XM, 1e-12);
            Assert.Equal(tops[i] + 2e-3, poles[i].AtM.ZM, 1e-12);
            // a tenth of a millimetre moves a neighbour's share alone
            Assert.Equal(1, poles[i].Field.Value / Read(model, 2e-3)[i].Field.Value, 0.02);
        }
    }

    [Fact]
    public void Reversed_magnets_read_the_same_the_other_way_and_without_magnets_there_is_nothing_to_read()
    {
        PickupModel model = Rod(3.6);
        PoleModel pole = model.Coils[0].Poles[0];
        PickupModel With(double source) =>
            model with
            {
                Coils = [model.Coils[0] with { Poles = [pole with { PolarisationT = Estimate.Exact(source) }] }],
            };
        Assert.Equal(-Read(With(0.4), 1e-3)[0].Field.Value, Read(With(-0.4), 1e-3)[0].Field.Value, 1e-12);
        Assert.Empty(Read(With(0), 1e-3));
    }

    [Fact]
    public void The_interval_holds_magnets_permeability_and_distance_in_quadrature()
    {
        PickupModel model = Rod(3.6);
        PoleModel pole = model.Coils[0].Poles[0];
        Figure Of(Estimate source, Estimate permeability) =>
            Read(
                model with
                {
                    Coils = [model.Coils[0] with { Poles = [pole with { PolarisationT = source, RelativePermeability = permeability }] }],
                },
                1e-3
            )[0].Field;
        static double Half(Figure figure) => Math.Log(figure.Estimate.High / figure.Estimate.Low) / 2;
        Estimate source = Estimate.Within(0.45, 0.2, Basis.Assumed),
            wide = Estimate.Within(3.6, 0.2, Basis.Assumed),
            known = Estimate.Exact(3.6);
        double steep = Math.Log(Read(model, 1e-3)[0].Field.Value / Read(model, 1.05e-3)[0].Field.Value),
            model1 = 0.008,
            strength = Math.Log(1.2); // 0.05 mm of distance; the fast engine's stated error
        double byPermeability = Math.Log(Of(source, Estimate.Exact(3.6 * 0.8)).Value / Of(source, Estimate.Exact(3.6 * 1.2)).Value) / 2;
        Assert.Equal(Math.Sqrt(strength * strength + steep * steep + model1 * model1), Half(Of(source, known)), 0.01);
        Assert.Equal(
            Math.Sqrt(strength * strength + steep * steep + model1 * model1 + byPermeability * byPermeability),
            Half(Of(source, wide)),
            0.012
        );
        Assert.True(byPermeability > 0.05);
    }

    private static IReadOnlyList<PoleForecast> Read(PickupModel model, double jigM, IFieldEngine? engine = null) =>
        Forecaster
            .Predict(
                model,
                load: null,
                new ForecastOptions { JigM = jigM, Engine = engine ?? new FastFieldEngine() },
                TestContext.Current.CancellationToken
            )
            .Pickup.Poles;

    private static PickupModel Rod(double permeability)
    {
        PickupModel model = Pickups.Single();
        PoleModel pole = model.Coils[0].Poles[0];
        return model with
        {
            Coils =
            [
                model.Coils[0] with
                {
                    Poles =
                    [
                        pole with
                        {
                            PositionsM = [0],
                            TopsM = [pole.TopsM[0]],
                            RelativePermeability = Estimate.Exact(permeability),
                            PolarisationT = Estimate.Exact(Source),
                            ConductivitySPerM = Estimate.Exact(0),
                        },
                    ],
                },
            ],
        };
    }
}
