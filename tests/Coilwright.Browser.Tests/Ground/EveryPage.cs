using System.Net;
using System.Text.RegularExpressions;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>One address of every kind of page that the links of a shop lead to.</summary>
internal static partial class EveryPage
{
    /// <summary>Pages that no link leads to: those that a form asks for, and the one that is not there.</summary>
    private static readonly string[] s_asked =
    [
        "/find?code=M-5",
        "/find?code=nothing",
        "/recall?code=0117&kind=spool",
        "/recipes/new?shape=bass-rows",
        "/no-such-page",
    ];

    /// <summary>
    /// Links, and forms that only ask, that lead on from "/" and from pages that only a form leads to; one of each kind: the pattern of its
    /// address and the names in its query.
    /// </summary>
    public static async Task<IReadOnlyList<string>> OfAsync(Uri url, IReadOnlyList<RoutePatternOf> patterns)
    {
        using HttpClient client = new() { BaseAddress = url, Timeout = TimeSpan.FromMinutes(5) };
        Dictionary<string, string> pages = new(StringComparer.Ordinal);
        Queue<string> next = new(["/", .. s_asked]);
        while (next.TryDequeue(out string? address))
        {
            string kind = KindOf(address, patterns);
            if (pages.ContainsKey(kind) || await TextAsync(client, address) is not { Length: > 0 } html)
            {
                continue;
            }

            pages[kind] = address;
            foreach (Match link in Link().Matches(html))
            {
                next.Enqueue(WebUtility.HtmlDecode(link.Groups[1].Value));
            }
        }

        return [.. pages.OrderBy(page => page.Key, StringComparer.Ordinal).Select(page => page.Value)];
    }

    /// <summary>The pattern of an address with the names asked for in it; of a view its name too, as each view is a page.</summary>
    public static string KindOf(string address, IReadOnlyList<RoutePatternOf> patterns)
    {
        string[] parts = address.Split('#')[0].Split('?', 2);
        string pattern = patterns.Where(one => one.Fits(parts[0])).OrderByDescending(one => one.Fast).FirstOrDefault()?.Text
            ?? "no such page";
        string[] asked =
        [
            .. (parts.Length > 1 ? parts[1] : "")
                .Split('&', StringSplitOptions.RemoveEmptyEntries)
                .Select(one => one.StartsWith("view=", StringComparison.Ordinal) ? one : one.Split('=')[0])
                .Where(one => one != "revision") // an earlier revision is shown by the same page
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];
        return $"{pattern}?{string.Join('&', asked)}";
    }

    /// <summary>The page, or nothing when the address gives a file or a picture.</summary>
    private static async Task<string> TextAsync(HttpClient client, string address)
    {
        using HttpResponseMessage answer = await client.GetAsync(new Uri(address, UriKind.Relative));
        return answer.Content.Headers.ContentType?.MediaType == "text/html" ? await answer.Content.ReadAsStringAsync() : "";
    }

    [GeneratedRegex("<(?:a|form method=\"get\") [^>]*?(?:href|action)=\"(/[^\"]*)\"")]
    private static partial Regex Link();
}
