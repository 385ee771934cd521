using System.CommandLine;
using Coilwright.Input;

namespace Coilwright.Commands;

/// <summary>What every command shares that stores a record with its time: the shop, the person, and that the clock is right.</summary>
internal sealed class EntryOptions
{
    private readonly Option<string?> _shop = ShopOptions.Shop();
    private readonly Option<string> _person = ShopOptions.Person();
    private readonly Option<bool> _clockIsRight = ShopOptions.ClockIsRight();

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Options.Add(_shop);
        command.Options.Add(_person);
        command.Options.Add(_clockIsRight);
    }

    /// <summary>Who did it.</summary>
    public string Person(ParseResult parsed) => parsed.GetRequiredValue(_person);

    /// <summary>The shop's file.</summary>
    public string Shop(ParseResult parsed) => parsed.GetValue(_shop) ?? OpenShop.UsualPath;

    /// <summary>Opens the shop for a look: it must be there, and nothing is asked about the clock.</summary>
    /// <exception cref="WrongInputException">The shop cannot be opened.</exception>
    public Task<OpenShop> LookAsync(ParseResult parsed, CommandContext desk, CancellationToken cancel) =>
        OpenShop.OpenAsync(Shop(parsed), desk, cancel);

    /// <summary>Opens the shop, and asks about the clock before anything is stored.</summary>
    /// <exception cref="WrongInputException">The shop cannot be opened, or the clock and the newest record do not go together.</exception>
    public Task<OpenShop> OpenAsync(ParseResult parsed, CommandContext desk, CancellationToken cancel) =>
        AskAsync(() => OpenShop.OpenAsync(parsed.GetValue(_shop), desk, cancel), parsed, cancel);

    /// <summary>As <see cref="OpenAsync"/>, but a named shop that is not there yet is made.</summary>
    /// <exception cref="WrongInputException">The shop cannot be opened, or the clock and the newest record do not go together.</exception>
    public Task<OpenShop> OpenOrCreateAsync(ParseResult parsed, CommandContext desk, CancellationToken cancel) =>
        AskAsync(() => OpenShop.OpenOrCreateAsync(parsed.GetValue(_shop), desk, cancel), parsed, cancel);

    private async Task<OpenShop> AskAsync(Func<Task<OpenShop>> opening, ParseResult parsed, CancellationToken cancel)
    {
        OpenShop open = await opening().ConfigureAwait(false);
        try
        {
            await open.AskAboutClockAsync(parsed.GetValue(_clockIsRight), Person(parsed), cancel).ConfigureAwait(false);
            return open;
        }
        catch
        {
            await open.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }
}
