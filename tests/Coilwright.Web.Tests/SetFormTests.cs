using Coilwright.Web.Forms;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Sets;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Coilwright.Web.Tests;

public sealed class SetFormTests
{
    [Fact]
    public void Rows_that_name_no_recipe_and_no_piece_are_left_out_and_the_others_keep_what_was_typed() =>
        Assert.Equal(
            [new SetPlace("neck", "Harbour bridge", ""), new SetPlace("bridge", "P-2", "+1,5 dB")],
            SetForm.Places(
                new StringValues(["neck", "middle", "bridge"]),
                new StringValues(["Harbour bridge", " ", "P-2"]),
                new StringValues(["", "3 dB", "+1,5 dB"])
            )
        );

    [Fact]
    public void Fields_that_are_missing_are_empty() =>
        Assert.Equal([new SetPlace("", "P-1", "")], SetForm.Places(StringValues.Empty, new StringValues("P-1"), StringValues.Empty));

    [Fact]
    public void The_charge_is_taken_as_typed() =>
        Assert.Equal(
            new ChargeEntry(" 900 g", "2 mm", "coil"),
            ChargeForm.Read(
                new FormValues(
                    new FormCollection(
                        new Dictionary<string, StringValues>
                        {
                            ["charge"] = " 900 g",
                            ["chargeJig"] = "2 mm",
                            ["charger"] = "coil",
                        }
                    )
                )
            )
        );
}
