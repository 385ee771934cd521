namespace Coilwright.Workshop.Entry;

/// <summary>Writes a problem as whole sentences, for pages and papers.</summary>
public static class ProblemSentences
{
    /// <summary>"The gauge is in no table. Understood: AWG 99. Allowed: AWG 34 to AWG 50."</summary>
    /// <param name="problem">What is wrong.</param>
    /// <param name="ofFile">True where a file is to be mended, in which the keys stand: they are left as they are.</param>
    public static string Write(Problem problem, bool ofFile = false)
    {
        string Told(string words) => Sentence(ofFile ? words : KeyLabels.In(words));
        string text = Told(problem.Message);
        text += problem.Understood is { Length: > 0 } understood ? " " + Told("Understood: " + understood) : "";
        return text + (problem.Allowed is { Length: > 0 } allowed ? " " + Told("Allowed: " + allowed) : "");
    }

    /// <summary>A capital in front and a stop behind.</summary>
    public static string Sentence(string words)
    {
        string text = words.Trim();
        if (text.Length == 0)
        {
            return "";
        }

        bool upper = text.Length > 1 && char.IsLower(text[0]) && !char.IsUpper(text[1]);
        text = upper ? char.ToUpperInvariant(text[0]) + text[1..] : text;
        return text[^1] is '.' or '?' or '!' or '…' ? text : text + ".";
    }
}
