using System.CommandLine;
using System.CommandLine.Parsing;
using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>
/// Options that hold a plain number, read the way the pages read them: "8,000", "8.000", "8 000" and "8k" are eight thousand pieces.
/// </summary>
public static class CountOptions
{
    /// <summary>A whole number of things.</summary>
    public static Option<int> AsCount(this Option<int> option)
    {
        option.CustomParser = result => Count(result, option.Name);
        return option;
    }

    /// <summary>A whole number of things that may be left out.</summary>
    public static Option<int?> AsCount(this Option<int?> option)
    {
        option.CustomParser = result => Count(result, option.Name);
        return option;
    }

    /// <summary>A whole number of things.</summary>
    public static Argument<int> AsCount(this Argument<int> argument)
    {
        argument.CustomParser = result => Count(result, argument.Name);
        return argument;
    }

    /// <summary>A number without a unit; a point or a comma is decimal.</summary>
    public static Option<double> AsNumber(this Option<double> option)
    {
        option.CustomParser = result => Number(result, option.Name);
        return option;
    }

    /// <summary>A number without a unit that may be left out.</summary>
    public static Option<double?> AsNumber(this Option<double?> option)
    {
        option.CustomParser = result => Number(result, option.Name);
        return option;
    }

    private static int Count(ArgumentResult result, string name)
    {
        string typed = Typed(result);
        if (!CountParser.TryParse(typed, int.MinValue, int.MaxValue, out int count, out string why))
        {
            result.AddError($"{name}: {why}");
        }

        return count;
    }

    private static double Number(ArgumentResult result, string name)
    {
        string typed = Typed(result);
        if (!CountParser.TryNumber(typed, out double number))
        {
            result.AddError($"{name}: \"{typed}\" is not a number");
        }

        return number;
    }

    private static string Typed(ArgumentResult result) => string.Join(' ', result.Tokens.Select(token => token.Value));
}
