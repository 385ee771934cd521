using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.People;

/// <summary>
/// What a password and a PIN must be: long, not guessable from the name, without rules about signs. Common practice, no source; the
/// least lengths are this program's own.
/// </summary>
public static class SecretRules
{
    /// <summary>Least and most letters of a password.</summary>
    public const int LeastPassword = 12,
        MostPassword = 128;

    /// <summary>Least and most digits of a PIN.</summary>
    public const int LeastPin = 4,
        MostPin = 8;

    /// <summary>What is wrong with a password for a person; null when nothing is.</summary>
    public static Problem? CheckPassword(string field, string typed, string name)
    {
        string allowed = string.Create(
            CultureInfo.InvariantCulture,
            $"{LeastPassword} to {MostPassword} letters, digits or signs; a few words"
        );
        if (typed.Length is < LeastPassword or > MostPassword)
        {
            return new Problem(field, "this is too short or too long for a password", null, allowed);
        }

        if (typed.Distinct().Count() < 5)
        {
            return new Problem(field, "this is one letter again and again", null, allowed);
        }

        bool isName = NameKey.Of(typed).Replace(NameKey.Of(name), "", StringComparison.Ordinal).Trim().Length < LeastPassword / 2;
        return name.Length > 0 && isName ? new Problem(field, "this is hardly more than the person's name", null, allowed) : null;
    }

    /// <summary>What is wrong with a PIN; null when nothing is.</summary>
    public static Problem? CheckPin(string field, string typed)
    {
        string allowed = string.Create(CultureInfo.InvariantCulture, $"{LeastPin} to {MostPin} digits");
        if (typed.Length is < LeastPin or > MostPin || !typed.All(char.IsAsciiDigit))
        {
            return new Problem(field, "a PIN is some digits", null, allowed);
        }

        int[] steps = [.. typed.Zip(typed.Skip(1), (one, next) => next - one).Distinct()];
        return steps is [-1 or 0 or 1]
            ? new Problem(field, "this PIN is guessed first: one digit again and again, or digits in their order", null, allowed)
            : null;
    }
}
