using System.Text.RegularExpressions;
using Coilwright.Analysis.Forecasts;
using Coilwright.Storage;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Tests.Architecture;

/// <summary>Pages and commands call use cases: they forecast nothing, build no model and open no database by themselves.</summary>
public sealed partial class UseCaseCallsTests
{
    [Theory]
    [InlineData("Coilwright.Web")]
    [InlineData("coilwright")]
    public void Pages_and_commands_leave_the_forecast_and_the_records_to_use_cases(string assembly) =>
        Assert.Empty(UseCaseCalls.Reserved(PathOf(assembly)));

    [Fact]
    public void The_command_line_sees_the_pages_only_where_it_serves_them() =>
        Assert.Equal(["Pages.cs"], RepositoryFiles.Written("src/Coilwright", ".cs").Where(NamesPages).Select(Path.GetFileName));

    // Proof that each check above fails when its rule is broken.
    [Fact]
    public void Planted_calls_past_the_use_cases_are_caught()
    {
        IReadOnlyList<string> caught = UseCaseCalls.Reserved(typeof(Planted).Assembly.Location);

        Assert.Contains("Coilwright.Analysis.Forecasts.Forecaster", caught);
        Assert.Contains("Coilwright.Workshop.Recipes.RecipeModelBuilder", caught);
        Assert.Contains("Coilwright.Storage.StorageFault", caught);
    }

    [Fact]
    public void The_use_cases_themselves_are_seen_to_make_such_calls() =>
        Assert.Contains("Coilwright.Storage.Records.ShopRecords", UseCaseCalls.Reserved(PathOf("Coilwright.Application")));

    [Theory]
    [InlineData("using Coilwright.Web;", true)]
    [InlineData("await using var app = Coilwright.Web.WebHost.Build([]);", true)]
    [InlineData("using Coilwright.Application.Shops;", false)]
    public void A_planted_name_of_the_pages_is_seen(string source, bool seen) => Assert.Equal(seen, PagesName().IsMatch(source));

    private static string PathOf(string assembly) => Path.Combine(AppContext.BaseDirectory, assembly + ".dll");

    private static bool NamesPages(string path) => PagesName().IsMatch(File.ReadAllText(path));

    [GeneratedRegex(@"\bCoilwright\.Web\b")]
    private static partial Regex PagesName();

    private static class Planted
    {
        public static void Forecast(Recipe recipe) => Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load: null);

        public static StorageFault? Fault(Exception failure) => StorageFault.Of(failure);
    }
}
