using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Tests.Steps;

/// <summary>What is being done decides what is warned of, wherever it is asked.</summary>
public sealed class CautionsTests
{
    private static readonly string[] s_baths = [Cautions.HotWax, Cautions.Vapour, Cautions.Hardener];

    /// <summary>
    /// All six kinds of potting that a recipe may name, with what each is warned of: its own hazards and no other bath's.
    /// </summary>
    private static readonly (string Kind, string[] Cautions)[] s_kinds =
    [
        ("none", []),
        ("wax", [Cautions.HotWax]),
        ("paraffin", [Cautions.HotWax]),
        ("beeswax", [Cautions.HotWax]),
        ("lacquer", [Cautions.Vapour]),
        ("epoxy", [Cautions.Hardener, Cautions.Vapour]),
    ];

    public static IEnumerable<TheoryDataRow<string, string[]>> Kinds =>
        s_kinds.Select(kind => new TheoryDataRow<string, string[]>(kind.Kind, kind.Cautions));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Each_kind_of_potting_is_warned_of_by_its_own_hazards_alone(string kind, string[] cautions)
    {
        Recipe recipe = Potted(kind);
        Assert.Equal(cautions, Cautions.ForPotting(kind));
        StepPlan? potting = UsualSteps.Of(recipe).SingleOrDefault(step => step.Name == "potting");
        Assert.Equal(cautions, potting?.Cautions ?? []);
        if (cautions.Length > 0)
        {
            Assert.Equal(cautions, Cautions.ForBath(kind));
            StepPlan own = RecipeSteps
                .Of(Potted(kind, """ "steps": [ { "name": "potting", "least": "12 min" } ], """))
                .Single(step => step.Name == "potting");
            Assert.Equal(cautions, own.Cautions);
        }
    }

    [Fact]
    public void A_recipe_may_be_potted_in_no_kind_that_is_not_walked_here()
    {
        string problem = RecipeReader.Read(Text("tar", "")).Problems.Single(one => one.Field == "potting.kind").Allowed!;
        Assert.Equal(s_kinds.Select(kind => kind.Kind).Order(), problem.Split(", ").Order());
    }

    [Theory]
    [InlineData(null)]
    [InlineData("none")]
    public void A_bath_that_is_not_known_may_be_any(string? kind) => Assert.Equal(s_baths, Cautions.ForBath(kind));

    [Theory]
    [InlineData("second wax", new[] { Cautions.HotWax })]
    [InlineData("lacquer dip", new[] { Cautions.Vapour })]
    [InlineData("epoxy the cover", new[] { Cautions.Hardener, Cautions.Vapour })]
    [InlineData("solder the cover", new[] { Cautions.EndFume, Cautions.Mains })]
    [InlineData("knock down", new[] { Cautions.Magnets, Cautions.Charger, Cautions.Mains })]
    [InlineData("rewind by hand", new[] { Cautions.Spindle, Cautions.FineWire, Cautions.EndFume, Cautions.Mains })]
    [InlineData("listening test", new[] { Cautions.Magnets, Cautions.Loudspeaker })]
    [InlineData("covering", new[] { Cautions.Vapour, Cautions.Hardener })]
    public void A_step_that_the_shop_named_is_warned_of_by_its_words(string step, string[] cautions) =>
        Assert.Equal(cautions, Cautions.ForStep(step, "wax", charges: false));

    [Fact]
    public void A_step_that_charges_is_warned_of_magnets_and_charger_whatever_its_name()
    {
        Assert.Equal([Cautions.Magnets, Cautions.Charger, Cautions.Mains], Cautions.ForStep("bring to level", "wax", charges: true));
        Assert.Equal(
            [Cautions.HotWax, Cautions.Magnets, Cautions.Charger, Cautions.Mains],
            Cautions.ForStep("potting", "wax", charges: true)
        );
    }

    [Fact]
    public void The_usual_steps_are_warned_of_by_what_is_done_in_them()
    {
        Dictionary<string, IReadOnlyList<string>> told = UsualSteps
            .Of(Potted("wax"))
            .ToDictionary(step => step.Name, step => step.Cautions);
        Assert.Equal([Cautions.EndFume, Cautions.Mains], told["assembly"]);
        Assert.Equal([Cautions.Magnets, Cautions.Charger, Cautions.Mains], told["magnets"]);
        Assert.Equal([Cautions.Vapour, Cautions.Hardener], told["marking"]);
        Assert.Equal([Cautions.Magnets, Cautions.Loudspeaker], told["final test"]);
        Assert.Equal([Cautions.Magnets], told["packing"]);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Making_a_recipe_is_warned_of_winding_its_own_bath_and_its_magnets(string kind, string[] cautions)
    {
        Assert.Equal([.. Cautions.For(Job.Winding), .. cautions, Cautions.Magnets], Cautions.ForMaking(kind, hasMagnets: true));
        Assert.DoesNotContain(Cautions.Magnets, Cautions.ForMaking(kind, hasMagnets: false));
    }

    /// <summary>Texts that stand on papers, whatever the job.</summary>
    private static readonly string[] s_ofPapers =
    [
        nameof(Cautions.ClosingLine),
        nameof(Cautions.MagnetsOnLabel),
        nameof(Cautions.MagnetsOnSmallLabel),
    ];

    [Fact]
    public void Every_job_is_warned_of_and_every_text_is_used()
    {
        IReadOnlyList<string>[] jobs = [.. Enum.GetValues<Job>().Select(Cautions.For)];
        Assert.All(jobs, cautions => Assert.NotEmpty(cautions));
        Assert.All(jobs, cautions => Assert.Equal(cautions, cautions.Distinct()));
        string[] texts =
        [
            .. typeof(Cautions)
                .GetFields()
                .Where(field => field.IsLiteral && !s_ofPapers.Contains(field.Name))
                .Select(field => (string)field.GetRawConstantValue()!),
        ];
        Assert.Empty(texts.Except(jobs.SelectMany(one => one).Concat(s_baths)));
    }

    [Fact]
    public void Texts_name_what_they_must()
    {
        Assert.Contains("Power off before threading or clearing", Cautions.Spindle, StringComparison.Ordinal);
        Assert.All([Cautions.Spindle, Cautions.FineWire, Cautions.Magnets, Cautions.Charger, Cautions.HotWax], text =>
            Assert.Contains("eye protection", text, StringComparison.OrdinalIgnoreCase)
        );
        Assert.Contains("interlock", Cautions.Charger, StringComparison.Ordinal);
        Assert.All(["winder", "wax tank", "iron", "charger", "lamp", "old winder"], machine =>
            Assert.Contains(machine, Cautions.Mains, StringComparison.Ordinal)
        );
        Assert.All([Cautions.Magnets, Cautions.MagnetsOnLabel, Cautions.Implants], text =>
            Assert.All(["pacemakers", "defibrillators", "pumps", "shunts"], implant =>
                Assert.Contains(implant, text, StringComparison.Ordinal)
            )
        );
        Assert.Contains("can cause permanent allergy", Cautions.Hardener, StringComparison.Ordinal);
        Assert.All(["safety data sheet", "local codes", "licensed"], word =>
            Assert.Contains(word, Cautions.ClosingLine, StringComparison.Ordinal)
        );
    }

    private static Recipe Potted(string kind, string more = "") => RecipeReader.Read(Text(kind, more)).Value!;

    private static string Text(string kind, string more) =>
        File.ReadAllText(RepositoryPath.Of("demo", "recipes", "harbour-bridge.json"))
            .Replace("\"potting\": { \"kind\": \"wax\"", more + "\"potting\": { \"kind\": \"" + kind + "\"", StringComparison.Ordinal);
}
