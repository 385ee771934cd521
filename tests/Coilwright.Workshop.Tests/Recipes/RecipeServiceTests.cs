using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Tests.Winding;

namespace Coilwright.Workshop.Tests.Recipes;

public sealed class RecipeServiceTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact] // revision C says 8,000 turns; 8,050 makes revision D and asks for a reason; a batch begun on C stays on C
    public async Task Story_1_a_change_of_turns_makes_revision_D_asks_for_a_reason_and_leaves_the_batch_on_C()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord c = await shop.ReleasedAsync(revisions: 3);
        Assert.Equal("C", c.Letter);
        BatchRecord batch = await shop.BatchAsync(c);
        string changed = WorkingShop.Harbour(turns: 8050);

        RecipeOutcome silent = await shop.Book.SaveAsync(c.RecipeId, changed, " ", "Joss", 3, Cancel);
        RecipeOutcome told = await shop.Book.SaveAsync(c.RecipeId, changed, "a little hotter", "Joss", 3, Cancel);

        Assert.Equal("reason", Assert.Single(silent.Problems).Field);
        Assert.Null(silent.Revision);
        Assert.Equal(("D", RevisionState.Draft, "a little hotter"), (told.Revision!.Letter, told.Revision.State, told.Revision.Reason));
        Assert.Equal(c.Json, (await shop.Records.Recipes.FindRevisionAsync(c.RecipeId, 3, Cancel))!.Json);
        await shop.Book.ReleaseAsync(c.RecipeId, 4, "Joss", Cancel);
        Assert.Equal("C", (await shop.StatusAsync(batch)).RevisionLetter);
    }

    [Fact]
    public async Task A_draft_is_replaced_keeps_its_reason_and_is_released_once()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord a = await shop.ReleasedAsync();
        await shop.Book.SaveAsync(a.RecipeId, WorkingShop.Harbour(8050), "hotter", "Joss", 1, Cancel);
        RecipeOutcome again = await shop.Book.SaveAsync(a.RecipeId, WorkingShop.Harbour(8060), "", "Mara", 2, Cancel);
        Assert.Equal((2, "hotter", "Mara"), (again.Revision!.Number, again.Revision.Reason, again.Revision.Person));

        RecipeOutcome first = await shop.Book.ReleaseAsync(a.RecipeId, 2, "Joss", Cancel),
            second = await shop.Book.ReleaseAsync(a.RecipeId, 2, "Ines", Cancel);
        Assert.Equal((RevisionState.Released, "Mara", "Joss"), (first.Revision!.State, first.Revision.Person, first.Revision.ReleasedBy));
        Assert.Equal(first.Revision, second.Revision);
        Assert.Equal(2, (await shop.Records.Recipes.RevisionsAsync(a.RecipeId, Cancel)).Count);
    }

    [Fact]
    public async Task Saving_what_is_there_already_makes_no_revision()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord a = await shop.ReleasedAsync();
        RecipeOutcome outcome = await shop.Book.SaveAsync(a.RecipeId, a.Json, "", "Joss", 1, Cancel);
        Assert.Empty(outcome.Problems);
        Assert.Equal(a, outcome.Revision);
    }

    [Fact]
    public async Task Two_people_on_one_recipe_do_not_overwrite_each_other()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord a = await shop.ReleasedAsync();
        await shop.Book.SaveAsync(a.RecipeId, WorkingShop.Harbour(8050), "hotter", "Joss", 1, Cancel);
        RecipeOutcome late = await shop.Book.SaveAsync(a.RecipeId, WorkingShop.Harbour(7900), "cooler", "Mara", 1, Cancel);
        Problem problem = Assert.Single(late.Problems);
        Assert.Equal("revision", problem.Field);
        Assert.Contains("Joss", problem.Message, StringComparison.Ordinal);
        Assert.Contains("8050", Assert.Single(await shop.Book.ListAsync(Cancel)).Json, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_recipe_a_taken_name_and_a_missing_revision_are_told_and_nothing_is_stored()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord a = await shop.ReleasedAsync();
        Guid other = Guid.NewGuid();

        RecipeOutcome wrong = await shop.Book.SaveAsync(other, WorkingShop.Harbour(-3, "Other"), "", "Joss", 0, Cancel);
        RecipeOutcome taken = await shop.Book.SaveAsync(other, WorkingShop.Harbour(name: "HARBOUR BRIDGE"), "", "Joss", 0, Cancel);
        RecipeOutcome missing = await shop.Book.ReleaseAsync(a.RecipeId, 7, "Joss", Cancel);

        Assert.Contains(wrong.Problems, problem => problem.Field == "coils[0].winding.turns");
        Assert.Equal("name", Assert.Single(taken.Problems).Field);
        Assert.Equal("revision", Assert.Single(missing.Problems).Field);
        Assert.Equal(a.RecipeId, Assert.Single(await shop.Book.ListAsync(Cancel)).RecipeId);
    }
}
