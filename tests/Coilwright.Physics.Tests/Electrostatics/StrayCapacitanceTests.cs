using Coilwright.Physics.Electrostatics;
using Coilwright.Physics.Tests.BoundaryElements;
using Coilwright.Shared;

namespace Coilwright.Physics.Tests.Electrostatics;

/// <summary>Field lines drawn straight across against finite elements of our own and against handbook forms.</summary>
public sealed class StrayCapacitanceTests
{
    private const string Models = "our finite-element sections, gmsh and getdp: tests/Reference/field/own-capacitances.csv [FieldModels]";
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
            StraySections.Farad(
                StraySections.Section(name, hot == "start" ? CoilEnd.Start : CoilEnd.Finish, grounded == "yes", lengthMm)
            );
        double perM = (At(300) - At(200)) / 0.1;
        Evidence
            .Outside($"Capacitance of a section: {name}, the {hot} hot, metal grounded: {grounded}", Models, "run here", Method)
            .BetweenParts(perM, Finest(name, hot, grounded), 1 / 1.5 - 1, 0.5)
            .Record();
    }

    [Fact]
    public void Rods_in_a_former_agree_with_finite_elements()
    {
        CoilModel coil = StraySections.Coil(61, 6.2, 0, CoilEnd.Start, StraySections.Rods(4.75, 40, [-26, -15.6, -5.2, 5.2, 15.6, 26]));
        double At(double heightMm) =>
            StraySections.Farad(
                new PickupModel
                {
                    Coils =
                    [
                        coil with
                        {
                            Bobbin = coil.Bobbin with { WindingHeightM = heightMm / 1e3, Permittivity = Estimate.Exact(4) },
                        },
                    ],
                }
            );
        Evidence
            .Outside("Capacitance from a winding to six rods inside, per metre of height", Models, "run here", Method)
            .BetweenParts((At(12) - At(8)) / 0.004, Finest("rods", "any", "yes"), 1 / 1.5 - 1, 0.5)
            .Record();
    }

    private static double Finest(string name, string hot, string grounded) =>
        FieldCases
            .Read("own-capacitances.csv")
            .Where(row => row["name"] == name && row["hot"] == hot && row["grounded"] == grounded)
            .MinBy(row => row.Number("mesh"))!
            .Number("faradPerM");
}
