using Coilwright.Application.Composition;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright;

/// <summary>What every command works with: where answers and messages go, the clock, and what a person can do without a shop.</summary>
/// <param name="output">Answers.</param>
/// <param name="error">Messages.</param>
/// <param name="time">The clock.</param>
public sealed class CommandContext(TextWriter output, TextWriter error, TimeProvider time) : IDisposable
{
    private readonly Lazy<ServiceProvider> _services = new(() => new ServiceCollection().AddCoilwright(time).BuildServiceProvider());

    /// <summary>Answers.</summary>
    public TextWriter Output => output;

    /// <summary>Messages.</summary>
    public TextWriter Error => error;

    /// <summary>Where a question is answered, in place of the terminal; null for the terminal.</summary>
    public TextReader? Input { get; init; }

    /// <summary>The clock.</summary>
    public TimeProvider Time => time;

    /// <summary>The hour at the shop, for papers and lists.</summary>
    public DateTimeOffset LocalNow => Time.GetLocalNow();

    /// <summary>What a person does that needs no shop.</summary>
    public T Use<T>()
        where T : notnull => _services.Value.GetRequiredService<T>();

    /// <summary>Ends what was begun.</summary>
    public void Dispose()
    {
        if (_services.IsValueCreated)
        {
            _services.Value.Dispose();
        }
    }
}
