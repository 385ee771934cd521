using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>Parts that stand in each other are named with the numbers that collide; parts that only come close are not.</summary>
public sealed class CollidingPartsTests
{
    private const string Cover =
        """{ "shape": "cover", "material": "nickel-silver", "thickness": "0.5 mm", "length": "70 mm", "width": "38 mm", "top": "7.5 """
        + """mm", "bottom": "-6 mm" }""";

    [Fact]
    public void A_magnet_bar_through_the_slugs_is_named_with_what_they_share()
    {
        Problem problem = Assert.Single(Problems(recipe => recipe["magnets"]![0]!["centre"]![1] = "-5 mm"), one =>
            one.Field == "magnets[0]" && one.Message.Contains("coils[0].poles[0]", StringComparison.Ordinal)
        );
        Assert.Contains("mm deep seen from above", problem.Understood, StringComparison.Ordinal);
    }

    [Fact] // a bar whose corner passes a round slug diagonally: their boxes overlap, they do not
    public void A_bars_corner_beside_a_round_slug_is_no_collision()
    {
        void Near(JsonNode recipe)
        {
            recipe["metalwork"]!.AsArray().Clear();
            recipe["magnets"]![0]!["size"] = new JsonArray("6 mm", "12.5 mm", "3.2 mm");
            // corner at 17 and 23, -7.85: the slug at 25, -9.5 has radius 2.4
            recipe["magnets"]![0]!["centre"] = new JsonArray("20 mm", "-1.6 mm", "-6 mm");
        }

        Assert.DoesNotContain(Problems(Near), problem => problem.Field == "magnets[0]");
    }

    [Fact]
    public void A_cover_that_cuts_a_winding_or_a_pole_is_refused_and_one_that_clears_all_is_not()
    {
        Assert.DoesNotContain(
            Problems(recipe =>
                recipe["metalwork"]!
                    .AsArray()
                    .Add(
                        JsonNode.Parse(
                            Cover
                                .Replace("\"length\": \"70 mm\"", "\"length\": \"90 mm\"", StringComparison.Ordinal)
                                .Replace("\"width\": \"38 mm\"", "\"width\": \"60 mm\"", StringComparison.Ordinal)
                        )
                    )
            ),
            problem => problem.Field == "metalwork[1]"
        );
        Assert.Contains(
            Problems(recipe =>
                recipe["metalwork"]!
                    .AsArray()
                    .Add(JsonNode.Parse(Cover.Replace("\"width\": \"38 mm\"", "\"width\": \"19 mm\"", StringComparison.Ordinal)))
            ),
            problem =>
                problem.Field == "metalwork[1]" && problem.Message.Contains("the wall of this cover cuts through", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_plate_through_a_winding_says_where_it_would_be_clear()
    {
        const string Plate =
            """{ "shape": "plate", "material": "brass", "thickness": "1 mm", "length": "80 mm", "width": "40 mm", "top": "0.5 """
            + """mm", "bottom": "-0.5 mm" }""";
        Problem problem = Problems(recipe => recipe["metalwork"]!.AsArray().Add(JsonNode.Parse(Plate)))
            .First(one => one.Field == "metalwork[1]" && one.Message.Contains("winding", StringComparison.Ordinal));
        Assert.Contains("above 3.200 mm or below -3.200 mm", problem.Allowed!.Replace('−', '-'), StringComparison.Ordinal);
    }

    private static IReadOnlyList<Problem> Problems(Action<JsonNode> change)
    {
        JsonNode recipe = JsonNode.Parse(DemoFiles.Recipe("breakwater-twin"))!;
        Assert.Empty(RecipeReader.Read(recipe.ToJsonString()).Problems);
        change(recipe);
        return RecipeReader.Read(recipe.ToJsonString()).Problems;
    }
}
