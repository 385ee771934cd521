using System.CommandLine;
using Coilwright.Application.Learning;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Input;

/// <summary>Options by which a command on a recipe file takes in what a shop knows and has learnt.</summary>
/// <param name="shop">What --shop means for the command.</param>
internal sealed class LearningOptions(string shop = "Takes in what this shop knows of its parts and what its readings taught it")
{
    /// <summary>The shop.</summary>
    public Option<string?> Shop { get; } = new("--shop") { Description = shop, HelpName = "FILE" };

    /// <summary>The spool.</summary>
    public Option<string?> Spool { get; } =
        new("--spool") { Description = "With --shop: the spool that it is wound from, so that its lot counts", HelpName = "LABEL" };

    /// <summary>The plain forecast.</summary>
    public Option<bool> Without { get; } = new("--without-learning") { Description = "With --shop: leaves out what the readings taught" };

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Options.Add(Shop);
        command.Options.Add(Spool);
        command.Options.Add(Without);
    }

    /// <summary>The recipe of a file, filled with what the shop knows where one is named.</summary>
    /// <exception cref="WrongInputException">File, recipe, shop or spool is wrong.</exception>
    public async Task<Recipe> ReadAsync(string path, ParseResult parsed, CommandContext desk, CancellationToken cancel) =>
        await FillAsync(await RecipeFile.ReadAsync(path, cancel).ConfigureAwait(false), parsed, desk, cancel).ConfigureAwait(false);

    private async Task<Recipe> FillAsync(Recipe recipe, ParseResult parsed, CommandContext desk, CancellationToken cancel)
    {
        string? file = parsed.GetValue(Shop);
        if (file is null)
        {
            return parsed.GetValue(Spool) is null && !parsed.GetValue(Without)
                ? recipe
                : throw WrongInputException.About("--shop", "--spool and --without-learning are of a shop", "--shop FILE");
        }

        await using OpenShop open = await OpenShop.OpenAsync(file, desk, cancel).ConfigureAwait(false);
        return (
            await open.Use<RecipeOfShop>()
                .FillAsync(recipe, parsed.GetValue(Spool)?.Trim() ?? "", !parsed.GetValue(Without), cancel)
                .ConfigureAwait(false)
        ).OrRefuse("");
    }
}
