using System.CommandLine;

namespace Coilwright.Commands;

/// <summary>Options that every command on a shop shares.</summary>
internal static class ShopOptions
{
    public static Option<string?> Shop() =>
        new("--shop")
        {
            Description = "The shop's file, or postgres://user@host:port/database; the one of this computer unless said",
            HelpName = "FILE",
        };

    public static Option<string> Person() =>
        new("--person")
        {
            Description = "Who did it; the computer's user unless said",
            HelpName = "NAME",
            DefaultValueFactory = _ => Environment.UserName,
        };

    public static Option<bool> ClockIsRight() =>
        new("--clock-is-right") { Description = "Keeps the entry though the newest record and this computer's clock are far apart" };

    public static Option<bool> Json() => new("--json") { Description = "Write JSON for programs" };
}
