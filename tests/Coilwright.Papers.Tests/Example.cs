using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests;

/// <summary>Story 1's coil, its forecast typed in by hand so that papers are tested without the engine.</summary>
internal static class Example
{
    public static Figure Figure(string name, string unit, double value, double fraction) =>
        new(name, unit, Estimate.Within(value, fraction, Basis.Forecast), new Derivation("", "", [], "", null));

    public static CoilForecast Forecast { get; } =
        new()
        {
            Name = "main",
            TurnsPerLayer = Figure("turnsPerLayer", "1", 57.9, 0),
            Layers = Figure("layers", "1", 138, 0.03),
            Fill = Figure("fill", "1", 0.67, 0.05),
            Build = Figure("build", "m", 3.78e-3, 0.05),
            OuterLength = Figure("outerLength", "m", 71.6e-3, 0.01),
            OuterWidth = Figure("outerWidth", "m", 13.8e-3, 0.03),
            MeanTurnLength = Figure("meanTurnLength", "m", 142e-3, 0.01),
            WireLength = Figure("wireLength", "m", 1136, 0.01),
            WireMass = Figure("wireMass", "kg", 34e-3, 0.08),
            DcResistance = Figure("dcResistance", "Ω", 6180, 0.08),
            AirInductance = Figure("airInductance", "H", 1.9, 0.02),
            Inductance = Figure("inductance", "H", 2.4, 0.06),
            Capacitance = Figure("capacitance", "F", 60e-12, 0.4),
        };

    public static PickupModel Model { get; } =
        new()
        {
            Coils =
            [
                new CoilModel
                {
                    Name = "main",
                    Bobbin = new Bobbin
                    {
                        CoreLengthM = 64e-3,
                        CoreWidthM = 6.2e-3,
                        EndRadiusM = 3.1e-3,
                        WindingHeightM = 11e-3,
                        MaxBuildM = 4.3e-3,
                    },
                    Wire = new WireModel
                    {
                        Gauge = "AWG 42",
                        Insulation = "plain-enamel",
                        BareDiameterM = Estimate.Within(63.5e-6, 0.04, Basis.Assumed),
                        OverallDiameterM = Estimate.Within(71e-6, 0.04, Basis.Assumed),
                        EnamelPermittivity = Estimate.Within(3.5, 0.1, Basis.Assumed),
                    },
                    Winding = new WindingModel
                    {
                        Turns = 8000,
                        PitchM = 0.19e-3,
                        TensionN = 14 * 9.80665e-3,
                        SpeedRpm = 1200,
                    },
                    Poles =
                    [
                        new PoleModel
                        {
                            Shape = PoleShape.Rod,
                            Material = "alnico-5",
                            DiameterM = 4.75e-3,
                            LengthM = 17e-3,
                            PositionsM = [-26e-3, -15.6e-3, -5.2e-3, 5.2e-3, 15.6e-3, 26e-3],
                            TopsM = [9e-3, 9e-3, 9e-3, 9e-3, 9e-3, 9e-3],
                            RelativePermeability = Estimate.Within(3.6, 0.2, Basis.Assumed),
                            ConductivitySPerM = Estimate.Within(2e6, 0.1, Basis.Assumed),
                            PolarisationT = Estimate.Within(0.31, 0.1, Basis.Assumed),
                        },
                    ],
                },
            ],
            Strings = new StringSetModel
            {
                Count = 6,
                SpacingM = 10.4e-3,
                ClearanceM = 2.5e-3,
                Strings = [],
            },
        };

    /// <summary>The set-up of story 1, with limits of ±4 % about 6.18 kΩ, in a room of 23 °C.</summary>
    public static WindingSetUp SetUp { get; } = MakeSetUp();

    private static WindingSetUp MakeSetUp()
    {
        CoilModel coil = Model.Coils[0];
        double warm = 1 + 0.00393 * 3;
        return new WindingSetUp
        {
            RecipeName = "Harbour bridge",
            Heading = new SheetHeading("Tin Shed Pickups", "C", new DateOnly(2026, 3, 2)),
            Machine = "Winder 2",
            Coils =
            [
                new CoilSetUp
                {
                    Name = "main",
                    Wire = "AWG 42 plain enamel",
                    BareDiameterM = coil.Wire.BareDiameterM,
                    OverallDiameterM = coil.Wire.OverallDiameterM,
                    WireLength = Forecast.WireLength,
                    WireMass = Forecast.WireMass,
                    Tension = new TensionAdvice(11 * 9.80665e-3, 17.6 * 9.80665e-3, 22 * 9.80665e-3, 14 * 9.80665e-3, "inside the band"),
                    PitchM = 0.19e-3,
                    PitchStated = true,
                    TurnsPerLayer = Forecast.TurnsPerLayer,
                    Layers = Forecast.Layers,
                    Turns = 8000,
                    SpeedRpm = 1200,
                    Direction = WindingDirection.CounterClockwise,
                    At20C = new ExpectedResistance(20, Forecast.DcResistance.Estimate, 5932.8, 6427.2),
                    AtRoom = new ExpectedResistance(23, Estimate.Within(6180 * warm, 0.08, Basis.Forecast), 5932.8 * warm, 6427.2 * warm),
                    Fill = new FillVerdict(Forecast.Fill, Forecast.Build, 4.3e-3, true, "fits, 0.52 mm to spare"),
                    Inductance = Forecast.Inductance,
                    OutermostTurnM = coil.Bobbin.TurnLengthM(Forecast.Build.Value),
                },
            ],
        };
    }
}
