using System.Globalization;
using Coilwright.Application.Composition;
using Coilwright.Application.Shops;
using Coilwright.Physics;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Input;

/// <summary>A shop whose file is open, and how commands find things in it by the names people use.</summary>
internal sealed class OpenShop : IAsyncDisposable
{
    private readonly OpenedShop _shop;

    private OpenShop(OpenedShop shop) => _shop = shop;

    public ShopServices Services => _shop.Services;

    public IShopRecords Records => _shop.Records;

    /// <summary>What a person does in this shop.</summary>
    public T Use<T>()
        where T : notnull => _shop.Use<T>();

    /// <summary>The file of this computer's own shop.</summary>
    public static string UsualPath =>
        Environment.GetEnvironmentVariable("COILWRIGHT_SHOP") is { Length: > 0 } named
            ? named
            : Path.Combine(
                Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create),
                "coilwright",
                "shop.db"
            );

    /// <summary>Opens a shop; the usual one is made when it is not there yet, a named one must exist.</summary>
    /// <exception cref="WrongInputException">There is no such file, or it is no shop this program can read.</exception>
    public static async Task<OpenShop> OpenAsync(string? path, CommandContext desk, CancellationToken cancel)
    {
        string file = path ?? UsualPath;
        return path is null && !await ExistsAsync(file, cancel).ConfigureAwait(false)
            ? await CreateAsync(file, "My workshop", desk.Time, cancel).ConfigureAwait(false)
            : await GuardAsync(OpenedShop.OpenAsync(file, desk.Time, cancel)).ConfigureAwait(false);
    }

    /// <summary>As <see cref="OpenAsync"/>, but a named shop that is not there yet is made: for the commands a shop begins with.</summary>
    public static async Task<OpenShop> OpenOrCreateAsync(string? path, CommandContext desk, CancellationToken cancel) =>
        path is not null && !await ExistsAsync(path, cancel).ConfigureAwait(false)
            ? await CreateAsync(path, "My workshop", desk.Time, cancel).ConfigureAwait(false)
            : await OpenAsync(path, desk, cancel).ConfigureAwait(false);

    /// <summary>Makes a new shop.</summary>
    /// <exception cref="WrongInputException">There is a file already, or none can be written there.</exception>
    public static Task<OpenShop> CreateAsync(string path, string shopName, TimeProvider time, CancellationToken cancel) =>
        GuardAsync(OpenedShop.CreateAsync(path, shopName, time, cancel));

    private static async Task<bool> ExistsAsync(string connection, CancellationToken cancel)
    {
        try
        {
            return await OpenedShop.ExistsAsync(connection, cancel).ConfigureAwait(false);
        }
        catch (ShopRefusedException refused)
        {
            throw WrongInputException.About("--shop", refused.Message);
        }
    }

    private static async Task<OpenShop> GuardAsync(Task<OpenedShop> opening)
    {
        try
        {
            return new OpenShop(await opening.ConfigureAwait(false));
        }
        catch (ShopRefusedException refused)
        {
            throw WrongInputException.About("--shop", refused.Message);
        }
    }

    /// <summary>A revision by the recipe's name and the revision's letter; the newest when no letter is given.</summary>
    /// <exception cref="WrongInputException">There is none; carries the names there are.</exception>
    public async Task<RevisionRecord> FindRecipeAsync(string name, string? letter, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> revisions = await RevisionsAsync(name, cancel).ConfigureAwait(false);
        RevisionRecord? found = letter is null
            ? revisions.MaxBy(one => one.Number)
            : revisions.FirstOrDefault(one => string.Equals(one.Letter, letter, StringComparison.OrdinalIgnoreCase));
        return found
            ?? throw WrongInputException.About(
                "--revision",
                $"{name} has no revision {letter}",
                string.Join(", ", revisions.Select(one => one.Letter))
            );
    }

    /// <summary>The newest released revision of a recipe.</summary>
    /// <exception cref="WrongInputException">There is no such recipe, or none of its revisions is released.</exception>
    public async Task<RevisionRecord> FindReleasedAsync(string name, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> revisions = await RevisionsAsync(name, cancel).ConfigureAwait(false);
        return revisions.Where(one => one.State == RevisionState.Released).MaxBy(one => one.Number)
            ?? throw WrongInputException.About(
                "RECIPE",
                $"{name} has no released revision; a batch needs one",
                $"release it first: coilwright recipe release \"{name}\""
            );
    }

    /// <summary>A batch by its name, as it stands.</summary>
    /// <exception cref="WrongInputException">There is none, or more than one.</exception>
    public async Task<BatchStatus> FindBatchAsync(string name, CancellationToken cancel) =>
        await Services
            .Winding.StatusAsync((await FindBatchRecordAsync(name, cancel).ConfigureAwait(false)).Id, cancel)
            .ConfigureAwait(false)
        ?? throw new InvalidOperationException("A batch without standing.");

    /// <summary>A batch's record by its name.</summary>
    /// <exception cref="WrongInputException">There is none, or more than one.</exception>
    public async Task<BatchRecord> FindBatchRecordAsync(string name, CancellationToken cancel)
    {
        IReadOnlyList<BatchRecord> batches = await Services.Records.Batches.AllAsync(cancel).ConfigureAwait(false);
        BatchRecord[] named = [.. batches.Where(batch => NameKey.Same(batch.Name, name) || batch.Id.ToString() == name.Trim())];
        if (named.Length == 0)
        {
            throw WrongInputException.About(
                "BATCH",
                $"there is no batch \"{name}\"",
                Names(NearNames.Find(name, batches.Select(batch => batch.Name), 20))
            );
        }

        if (named.Length > 1)
        {
            string which = string.Join(
                "; ",
                named.Select(batch =>
                    string.Create(CultureInfo.InvariantCulture, $"{batch.Id} begun {batch.BegunUtc:yyyy-MM-dd HH:mm} UTC")
                )
            );
            throw WrongInputException.About("BATCH", $"{named.Length} batches are called \"{name}\"; name one by its number", which);
        }

        return named[0];
    }

    /// <summary>A winder by its name.</summary>
    /// <exception cref="WrongInputException">There is none; carries the names there are.</exception>
    public async Task<Machine> FindMachineAsync(string name, CancellationToken cancel) =>
        await Services.Machines.FindAsync(name, cancel).ConfigureAwait(false)
        ?? throw WrongInputException.About(
            "--machine",
            $"there is no machine \"{name}\" in this shop",
            Names((await Services.Machines.ListAsync(cancel).ConfigureAwait(false)).Select(one => one.Name))
        );

    /// <summary>Refuses an entry whose time would be far from the newest record's, until the person says that the clock is right.</summary>
    /// <exception cref="WrongInputException">The clock and the newest record do not go together.</exception>
    public async Task AskAboutClockAsync(bool isRight, string person, CancellationToken cancel)
    {
        if (await Services.Pieces.Shelf.ClockQuestionAsync(cancel).ConfigureAwait(false) is not { } question)
        {
            return;
        }

        if (!isRight)
        {
            throw WrongInputException.About(
                "--clock-is-right",
                question.Words,
                "set the clock, or give --clock-is-right; nothing was stored"
            );
        }

        await Services.Pieces.Shelf.ClockIsRightAsync(person, cancel).ConfigureAwait(false);
    }

    public ValueTask DisposeAsync() => _shop.DisposeAsync();

    private async Task<IReadOnlyList<RevisionRecord>> RevisionsAsync(string name, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> newest = await Services.Records.Recipes.NewestAsync(cancel).ConfigureAwait(false);
        RevisionRecord[] named = [.. newest.Where(one => string.Equals(one.RecipeName, name, StringComparison.OrdinalIgnoreCase))];
        return named.Length switch
        {
            1 => await Services.Records.Recipes.RevisionsAsync(named[0].RecipeId, cancel).ConfigureAwait(false),
            0 => throw WrongInputException.About(
                "RECIPE",
                $"there is no recipe \"{name}\" in this shop",
                Names(newest.Select(one => one.RecipeName))
            ),
            _ => throw WrongInputException.About("RECIPE", $"{named.Length} recipes are called \"{name}\"; the pages tell them apart"),
        };
    }

    private static string Names(IEnumerable<string> names) => string.Join(", ", names.Take(20)) is { Length: > 0 } list ? list : "none yet";
}
