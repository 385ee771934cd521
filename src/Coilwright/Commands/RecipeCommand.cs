using System.CommandLine;
using System.Globalization;
using Coilwright.Formats.Records;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Commands;

/// <summary>coilwright recipe list, show, add, save, release: the shop's book of recipes.</summary>
public static class RecipeCommand
{
    public static Command Build(CommandContext desk) =>
        new("recipe", "The shop's recipes and their revisions")
        {
            BuildList(desk),
            BuildShow(desk),
            BuildAdd(desk),
            BuildSave(desk),
            BuildRelease(desk),
        };

    private static Command BuildList(CommandContext desk)
    {
        Option<string?> shop = ShopOptions.Shop();
        Option<bool> json = ShopOptions.Json();
        Command command = new("list", "Newest revision of every recipe") { shop, json };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                IReadOnlyList<RevisionRecord> newest = await open.Services.Records.Recipes.NewestAsync(cancel).ConfigureAwait(false);
                IReadOnlyList<UnreadableRecord> unreadable = await RecipeService.UnreadableAsync(newest).ConfigureAwait(false);
                await UnreadableFormatter.WriteAsync(desk.Error, unreadable).ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(RecipeListJson.Write(newest, unreadable)).ConfigureAwait(false);
                    return ExitCode.Done;
                }

                Table table = new("recipe", "revision", "state", "by", "saved");
                foreach (RevisionRecord one in newest)
                {
                    table.Add(
                        one.RecipeName,
                        one.Letter,
                        RecipeListJson.StateOf(one),
                        one.Person,
                        one.TimeUtc.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)
                    );
                }

                table.Write(desk.Output, "");
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command BuildShow(CommandContext desk)
    {
        Argument<string> name = new("RECIPE") { Description = "Name of a recipe in the shop" };
        Option<string?> revision = new("--revision")
        {
            Description = "Letter of the revision; the newest unless said",
            HelpName = "LETTER",
        };
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("show", "The recipe document, as written") { name, revision, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                RevisionRecord found = await open.FindRecipeAsync(parsed.GetRequiredValue(name), parsed.GetValue(revision), cancel)
                    .ConfigureAwait(false);
                await desk.Output.WriteLineAsync(found.Json.TrimEnd()).ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command BuildAdd(CommandContext desk)
    {
        Argument<string> file = new("FILE") { Description = "A recipe file (coilwright.recipe/1)" };
        EntryOptions entry = new();
        Command command = new("add", "Brings a recipe into the shop as revision A") { file };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetRequiredValue(file),
                    text = await InputFile.ReadAsync(path, cancel).ConfigureAwait(false);
                await using OpenShop open = await entry.OpenOrCreateAsync(parsed, desk, cancel).ConfigureAwait(false);
                RecipeOutcome outcome = await open
                    .Services.Recipes.SaveAsync(Guid.NewGuid(), text, "", entry.Person(parsed), 0, cancel)
                    .ConfigureAwait(false);
                return await SayAsync(desk, outcome, path, "added").ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Command BuildSave(CommandContext desk)
    {
        Argument<string> file = new("FILE") { Description = "The changed recipe; its name says which one it is" };
        Option<string> reason = new("--reason")
        {
            Description = "Why it changes; needed when the newest revision is released",
            DefaultValueFactory = _ => "",
        };
        EntryOptions entry = new();
        Command command = new("save", "Saves a change: into the draft, or as the next revision of a released one") { file, reason };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetRequiredValue(file),
                    text = await InputFile.ReadAsync(path, cancel).ConfigureAwait(false);
                Recipe recipe = RecipeReader.ReadFile(text).OrRefuse(path);
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                RevisionRecord newest = await open.FindRecipeAsync(recipe.Name, null, cancel).ConfigureAwait(false);
                RecipeOutcome outcome = await open
                    .Services.Recipes.SaveAsync(
                        newest.RecipeId,
                        text,
                        parsed.GetRequiredValue(reason),
                        entry.Person(parsed),
                        newest.Number,
                        cancel
                    )
                    .ConfigureAwait(false);
                return await SayAsync(desk, outcome, path, "saved").ConfigureAwait(false);
            }
        );
        return command;
    }

    private static Command BuildRelease(CommandContext desk)
    {
        Argument<string> name = new("RECIPE") { Description = "Name of a recipe in the shop" };
        EntryOptions entry = new();
        Command command = new("release", "Releases the newest revision; it never changes again") { name };
        entry.AddTo(command);
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await entry.OpenAsync(parsed, desk, cancel).ConfigureAwait(false);
                RevisionRecord newest = await open.FindRecipeAsync(parsed.GetRequiredValue(name), null, cancel).ConfigureAwait(false);
                RecipeOutcome outcome = await open
                    .Services.Recipes.ReleaseAsync(newest.RecipeId, newest.Number, entry.Person(parsed), cancel)
                    .ConfigureAwait(false);
                int exit = await SayAsync(desk, outcome, newest.RecipeName, "released").ConfigureAwait(false);
                await BatchCommand
                    .WarnAsync(
                        desk,
                        outcome.Revision!,
                        RecipeReader.Read(newest.Json).OrRefuse(newest.RecipeName),
                        await open.Services.Recipes.KnownPartsAsync(cancel).ConfigureAwait(false)
                    )
                    .ConfigureAwait(false);
                return exit;
            }
        );
        return command;
    }

    private static async Task<int> SayAsync(CommandContext desk, RecipeOutcome outcome, string source, string done)
    {
        if (outcome.Problems.Count > 0 || outcome.Revision is not { } revision)
        {
            throw new WrongInputException(source, outcome.Problems);
        }

        await desk
            .Output.WriteLineAsync($"{revision.RecipeName}, revision {revision.Letter}: {done}, {RecipeListJson.StateOf(revision)}")
            .ConfigureAwait(false);
        return ExitCode.Done;
    }
}
