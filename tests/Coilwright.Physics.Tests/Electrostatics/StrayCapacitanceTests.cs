using Coilwright.Physics.Electrostatics;
using Coilwright.Physics.Tests.BoundaryElements;
using Coilwright.Shared;

namespace Coilwright.Physics.Tests.Electrostatics;

/// <summary>Field lines drawn straight across against finite elements of our own and against handbook forms.</summary>
public sealed class StrayCapacitanceTests
{
    private const string Models = "our finite-element sections, gmsh and getdp: tests/Reference/field/own-capacitances.csv [FieldModels]";
    private const double Vacuum = Coilwright.Physics.Winding.LayCapacitance.VacuumPermittivity;
    private const string Method = "method: field lines straight across; the forecast allows a factor of 1.5 for it";

    [Theory]
    [InlineData("cover", "finish", "yes")]
    [InlineData("cover", "start", "yes")]
    [InlineData("pair-plate", "finish", "yes")]
    [InlineData("pair-plate", "start", "yes")]
    [InlineData("pair-plate", "finish", "no")]
    [InlineData("pair-plate", "start", "no")]
    [InlineData("pair-bar", "finish", "yes")]
    [InlineData("pair-bar", "start", "yes")]
    [InlineData("pair-bar", "finish", "no")]
    [InlineData("pair-bar", "start", "no")]
    public void A_long_section_agrees_with_finite_elements(string name, string hot, string grounded)
    {
        double At(double lengthMm) =>
            StraySections.Farad(StraySections.Section(name, hot == "start" ? CoilEnd.Start : CoilEnd.Finish, grounded == "yes", lengthMm));
        double perM = (At(300) - At(200)) / 0.1;
        Evidence
            .Outside(
                $"Capacitance of a section: {name}, the {hot} hot, metal grounded: {grounded}",
                Models,
                "run here",
                Method,
                (name, hot, grounded) == ("pair-plate", "start", "yes") ? "stray-worst" : ""
            )
            .BetweenParts(perM, Finest(name, hot, grounded), 1 / 1.5 - 1, 0.5)
            .Record();
    }

    [Fact]
    public void Rods_in_a_former_agree_with_finite_elements()
    {
        CoilModel coil = StraySections.Coil(61, 6.2, 0, CoilEnd.Start, StraySections.Rods(4.75, 40, [-26, -15.6, -5.2, 5.2, 15.6, 26]));
        Evidence
            .Outside("Capacitance from a winding to six rods inside, per metre of height", Models, "run here", Method)
            .BetweenParts(
                PerHeight(coil with { Bobbin = coil.Bobbin with { Permittivity = Estimate.Exact(4) } }),
                Finest("rods", "any", "yes"),
                1 / 1.5 - 1,
                0.5
            )
            .Record();
    }

    [Theory] // 2·π·ε0·ε/acosh((R² + r² − e²)/(2·R·r)) per metre of a rod e off the middle of a round former
    [InlineData(0, 0.001)]
    [InlineData(1.5, 0.02)]
    [InlineData(2.5, 0.06)]
    public void A_round_rod_in_a_round_former_agrees_with_cylinders_one_in_the_other(double offMm, double allowed)
    {
        CoilModel coil = StraySections.Coil(12, 12, 0, CoilEnd.Start, StraySections.Rods(5, 40, [offMm]));
        double expected = 2 * Math.PI * Vacuum * 3 / Math.Acosh((36 + 6.25 - offMm * offMm) / (2 * 6 * 2.5));
        Evidence
            .Outside(
                FormattableString.Invariant($"Capacitance per metre from a winding to a round rod {offMm:0.#} mm off its middle"),
                "coaxial and eccentric cylinders, exact [Smythe]",
                "memory",
                "method: field lines straight across are exact for a rod in the middle"
            )
            .WithinPart(PerHeight(coil), expected, allowed)
            .Record();
    }

    [Fact] // per metre along a blade and per metre of height: 2·ε0·ε/gap
    public void A_long_blade_agrees_with_parallel_plates()
    {
        double At(double lengthMm) =>
            PerHeight(StraySections.Coil(lengthMm, 6, 0, CoilEnd.Start, StraySections.Blade(lengthMm - 10, 4, 60, 30, grounded: true)));
        Evidence
            .Outside(
                "Capacitance from a winding to a long blade, each metre of length and height",
                "parallel plates, exact [Smythe]",
                "memory",
                "exact: both sides of the blade, its ends taken off by a second length"
            )
            .WithinPart((At(300) - At(200)) / 0.1, 2 * Vacuum * 3 / 0.001, 1e-6)
            .Record();
    }

    [Fact]
    public void Grounded_rods_count_when_the_start_is_hot_and_not_when_the_finish_is()
    {
        double With(CoilEnd hot, bool grounded)
        {
            PoleModel rods = StraySections.Rods(4.75, 17, [-26, -15.6, -5.2, 5.2, 15.6, 26]) with { Grounded = grounded };
            return StraySections.Farad(new PickupModel { Coils = [StraySections.Coil(61, 6.2, 0, hot, rods)] });
        }

        double bare = StraySections.Farad(new PickupModel { Coils = [StraySections.Coil(61, 6.2, 0, CoilEnd.Start)] });
        Assert.Equal(bare, With(CoilEnd.Finish, grounded: true), 1e-18);
        Assert.Equal(bare, With(CoilEnd.Start, grounded: false), 1e-18); // each rod takes the voltage of the turns about it
        Assert.InRange(With(CoilEnd.Start, grounded: true) - bare, 8e-12, 25e-12);
    }

    [Fact]
    public void A_cover_counts_in_full_when_the_finish_is_hot_and_hardly_when_the_start_is()
    {
        double With(CoilEnd hot) =>
            StraySections.Farad(
                new PickupModel
                {
                    Coils = [StraySections.Coil(61, 6, 0, hot)],
                    Sheets = [StraySections.Sheet(SheetShape.Cover, 73, 18, 14, -6, 0.5)],
                }
            );
        Assert.True(With(CoilEnd.Finish) > 2 * With(CoilEnd.Start));
    }

    [Fact]
    public void What_is_not_said_is_told_as_a_departure_and_what_is_said_is_not()
    {
        PoleModel rods = StraySections.Rods(4.75, 17, [-26, -15.6, -5.2, 5.2, 15.6, 26]);
        CoilModel coil = StraySections.Coil(61, 6.2, 0, CoilEnd.Start, rods);
        StrayEstimate Of(CoilModel one) => StrayCapacitance.Compute(new PickupModel { Coils = [one] }, [4e-3], [1]);
        Assert.Equal(0, Of(coil).UnsaidF);
        StrayEstimate unsaid = Of(coil with { Hot = null, Poles = [rods with { Grounded = null }] });
        Assert.Equal(0, unsaid.Metal.Value, 1e-18);
        Assert.Equal(Of(coil).Metal.Value, unsaid.UnsaidF, 1e-15);
    }

    [Fact]
    public void A_measured_capacitance_has_its_metal_in_it()
    {
        CoilModel coil = StraySections.Coil(61, 6.2, 0, CoilEnd.Start, StraySections.Rods(4.75, 17, [-5.2, 5.2]));
        CoilModel measured = coil with { Winding = coil.Winding with { MeasuredCapacitanceF = 90e-12 } };
        StrayEstimate stray = StrayCapacitance.Compute(new PickupModel { Coils = [measured] }, [4e-3], [1]);
        Assert.Equal((0, 0, 0), (stray.Metal.Value, stray.Between.Value, stray.OwnF));
    }

    private static double PerHeight(CoilModel coil)
    {
        double At(double heightMm) =>
            StraySections.Farad(new PickupModel { Coils = [coil with { Bobbin = coil.Bobbin with { WindingHeightM = heightMm / 1e3 } }] });
        return (At(12) - At(8)) / 0.004;
    }

    private static double Finest(string name, string hot, string grounded) =>
        FieldCases
            .Read("own-capacitances.csv")
            .Where(row => row["name"] == name && row["hot"] == hot && row["grounded"] == grounded)
            .MinBy(row => row.Number("mesh"))!
            .Number("faradPerM");
}
