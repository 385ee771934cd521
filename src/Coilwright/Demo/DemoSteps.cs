using System.Text;
using System.Text.RegularExpressions;
using Coilwright.Application.Shops;

namespace Coilwright.Demo;

/// <summary>Hears what the making of the invented shop tells, and keeps its newest headline.</summary>
internal sealed partial class DemoSteps : TextWriter
{
    private volatile string _step = "beginning";
    private volatile int _number;

    public override Encoding Encoding => Encoding.UTF8;

    /// <summary>How far it is.</summary>
    public DemoProgress Progress => new(_step, Math.Max(0, _number - 1) / (double)DemoShop.Steps, null, "");

    public override void Write(char value) { }

    public override void WriteLine(string? value)
    {
        if (Headline().Match(value ?? "") is { Success: true } found)
        {
            (_number, _step) = (_number + 1, found.Groups[1].Value);
        }
    }

    public override Task WriteLineAsync(string? value)
    {
        WriteLine(value);
        return Task.CompletedTask;
    }

    /// <summary>"4. Today: a batch at the winder", at the beginning of a line.</summary>
    [GeneratedRegex(@"^\d\. (.+)$", RegexOptions.Multiline)]
    private static partial Regex Headline();
}
