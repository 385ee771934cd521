using Coilwright.Physics.Materials;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Physics.Tests.Materials;

/// <summary>The sum of the magnets' moments, for the question that air freight asks.</summary>
public sealed class MagnetMomentTests
{
    // By hand: a rod of 5 mm × 17 mm holds 3.33794e-7 m³; at 1.3 T it has 1.3·V/µ0 = 0.3453125 A·m². A bar of 60 × 12.5 × 3 mm at 1.2 T has
    // 2.148592 A·m².
    [Fact]
    public void A_rod_and_a_bar_of_permeability_one_have_source_times_volume_over_mu0()
    {
        Assert.Equal(0.3453125, MagnetMoment.UpperBoundAm2(Model(Rods(1))), 1e-12);
        Assert.Equal(6 * 0.3453125, MagnetMoment.UpperBoundAm2(Model(Rods(6))), 1e-12);
        Assert.Equal(2.148592, MagnetMoment.UpperBoundAm2(Model(null) with { Bars = [Bar(1.2)] }), 5e-7);
    }

    [Fact]
    public void Magnets_that_face_each_other_count_with_their_sizes_and_steel_not_at_all()
    {
        PoleModel steel = Rods(6) with
        {
            PolarisationT = Estimate.Exact(0, Basis.Assumed),
            RelativePermeability = Estimate.Exact(500, Basis.Assumed),
        };
        Assert.Equal(0, MagnetMoment.UpperBoundAm2(Model(steel)));
        PickupModel facing = Model(Rods(1) with { PolarisationT = Estimate.Exact(-1.3, Basis.Assumed) }) with
        {
            Bars = [Bar(1.2), Bar(-1.2)],
        };
        Assert.Equal(0.3453125 + 2 * 2.148592, MagnetMoment.UpperBoundAm2(facing), 1e-5);
    }

    [Fact]
    public void The_upper_ends_of_the_intervals_count()
    {
        PoleModel wide = Rods(1) with
        {
            PolarisationT = new Estimate(1.3, 1.2, 1.43, Basis.Assumed),
            RelativePermeability = new Estimate(1.05, 1, 1.1, Basis.Assumed),
        };
        Assert.Equal(0.3453125 * 1.1 * 1.1, MagnetMoment.UpperBoundAm2(Model(wide)), 1e-6);
        Assert.Equal(
            2.148592 * 1.05,
            MagnetMoment.UpperBoundAm2(Model(null) with { Bars = [Bar(1.2) with { PolarisationSpread = 0.05 }] }),
            1e-5
        );
    }

    /// <summary>
    /// Another way to the same number: the closed form of a uniformly magnetised cylinder on its axis, ½·Br·(cos β − cos α), at 2.1 m.
    /// </summary>
    [Fact]
    public void From_far_away_a_rod_has_the_field_that_its_moment_says()
    {
        const double RadiusM = 0.0025,
            LengthM = 0.017,
            RemanenceT = 1.3,
            DistanceM = 2.1;
        double far = DistanceM + LengthM / 2,
            near = DistanceM - LengthM / 2;
        double cylinderT = RemanenceT / 2 * (far / double.Hypot(far, RadiusM) - near / double.Hypot(near, RadiusM));
        // 2·(L/2r)² = 3.3e-5; the two cosines cancel to about 1e-9
        Assert.Equal(1, DipoleField.LargestT(MagnetMoment.UpperBoundAm2(Model(Rods(1))), DistanceM) / cylinderT, 5e-5);
    }

    private static PickupModel Model(PoleModel? poles) =>
        new()
        {
            Coils =
            [
                new CoilModel
                {
                    Name = "main",
                    Bobbin = new Bobbin
                    {
                        CoreLengthM = 61e-3,
                        CoreWidthM = 6e-3,
                        EndRadiusM = 3e-3,
                        WindingHeightM = 11e-3,
                        MaxBuildM = 4e-3,
                    },
                    Wire = WireCatalogue.Standard.ModelFor("AWG 42", "single", "plain-enamel"),
                    Winding = new WindingModel
                    {
                        Turns = 8000,
                        PitchM = 0.19e-3,
                        Direction = WindingDirection.Clockwise,
                    },
                    Poles = poles is null ? [] : [poles],
                },
            ],
        };

    private static PoleModel Rods(int count) =>
        new()
        {
            Shape = PoleShape.Rod,
            Material = "alnico-5",
            DiameterM = 5e-3,
            WidthM = 5e-3,
            LengthM = 17e-3,
            PositionsM = [.. Enumerable.Range(0, count).Select(at => at * 10e-3)],
            TopsM = [.. Enumerable.Repeat(8.5e-3, count)],
            RelativePermeability = Estimate.Exact(1, Basis.Assumed),
            ConductivitySPerM = Estimate.Exact(2e6, Basis.Assumed),
            PolarisationT = Estimate.Exact(1.3, Basis.Assumed),
        };

    private static BarModel Bar(double sourceT) =>
        new()
        {
            Material = "alnico-5",
            SizeM = new Vector3M(60e-3, 12.5e-3, 3e-3),
            CentreM = default,
            RelativePermeability = Estimate.Exact(1, Basis.Assumed),
            ConductivitySPerM = Estimate.Exact(2e6, Basis.Assumed),
            PolarisationT = new Vector3M(0, sourceT, 0),
        };
}
