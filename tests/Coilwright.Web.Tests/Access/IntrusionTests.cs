using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using Coilwright.Web.Hosting.Access;
using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Tests.Access;

/// <summary>
/// Somebody who does not belong tries to get in: other methods, keys that were made up or changed, bodies that are too long or never come,
/// foreign names and pages, addresses that climb. Nothing of it opens anything, and nothing breaks the server.
/// </summary>
public sealed partial class IntrusionTests
{
    /// <summary>Methods that no page is asked with, and one that does not exist.</summary>
    private static readonly string[] s_methods = ["HEAD", "OPTIONS", "PUT", "DELETE", "PATCH", "TRACE", "QUERY", "BREW"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_method_opens_an_address_to_nobody_or_to_a_role_without_the_right()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        using HttpClient nobody = people.Shop.Browser();
        HttpClient winder = await people.AsAsync(Role.Winder);
        List<string> wrong = [];
        int asked = 0;
        foreach (string pattern in PatternsOf(people.Shop))
        {
            foreach (string method in s_methods)
            {
                asked++;
                HttpStatusCode outside = await AskAsync(nobody, method, pattern);
                bool isOpen = RouteRules.Of(pattern, method == "HEAD" ? "GET" : method)?.IsOpen == true;
                bool isKept = outside is HttpStatusCode.Unauthorized or HttpStatusCode.Redirect or HttpStatusCode.MethodNotAllowed;
                wrong.AddRange(isKept || isOpen ? [] : [$"nobody {method} {pattern}: {outside}"]);
                HttpStatusCode inside = await AskAsync(winder, method, pattern);
                bool isHarmless = method == "HEAD" ? inside < HttpStatusCode.InternalServerError : (int)inside is >= 400 and < 500;
                wrong.AddRange(isHarmless ? [] : [$"winder {method} {pattern}: {inside}"]);
            }
        }

        Assert.Empty(wrong);
        Assert.InRange(asked, 1000, 5000);
    }

    [Fact]
    public async Task A_key_that_was_made_up_changed_cut_or_swollen_is_no_key()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        string key = (
            await people.Use<SignInService>().SignInAsync(PeopleOfShop.NameOf(Role.Owner), PeopleOfShop.Password, "x", Cancel)
        ).Key;
        using (HttpClient own = people.Shop.Browser(key))
        {
            Assert.Equal(HttpStatusCode.OK, await StatusAsync(own, "/shop/people")); // the key itself opens
        }

        Guid owner = (await people.Use<AccountService>().PeopleAsync(Cancel)).First(one => one.Role == Role.Owner).Id;
        string[] forged =
        [
            "",
            "x",
            key[..^1],
            key + "A",
            (key[0] == 'A' ? 'B' : 'A') + key[1..],
            new string([.. key.Select(one => char.IsUpper(one) ? char.ToLowerInvariant(one) : char.ToUpperInvariant(one))]),
            owner.ToString(),
            PeopleOfShop.NameOf(Role.Owner).Replace(" ", "%20", StringComparison.Ordinal),
            "' OR '1'='1",
            "%00",
            "../../shop.db",
            new string('A', 12_000),
        ];
        foreach (string one in forged)
        {
            await OpensNothingAsync(people.Shop, one);
        }
    }

    private static async Task OpensNothingAsync(ServedShop shop, string key)
    {
        string told = key[..Math.Min(40, key.Length)];
        using HttpClient browser = shop.Browser(key);
        HttpStatusCode page = await StatusAsync(browser, "/shop/people");
        Assert.True(page == HttpStatusCode.Redirect, $"{told}: {page}");
        using HttpClient program = shop.Browser();
        program.DefaultRequestHeaders.TryAddWithoutValidation("Authorization", "Bearer " + key);
        HttpStatusCode api = await StatusAsync(program, "/api/now");
        Assert.True(api == HttpStatusCode.Unauthorized, $"token {told}: {api}");
    }

    [Fact]
    public async Task A_key_that_was_given_back_is_not_taken_again()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        SignInService sessions = people.Use<SignInService>();
        string key = (await sessions.SignInAsync(PeopleOfShop.NameOf(Role.Owner), PeopleOfShop.Password, "x", Cancel)).Key;
        using HttpClient browser = people.Shop.Browser(key);
        using (FormUrlEncodedContent nothing = new([]))
        using (HttpResponseMessage left = await browser.PostAsync(new Uri("/sign-out", UriKind.Relative), nothing, Cancel))
        {
            Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        }

        Assert.Equal(HttpStatusCode.Redirect, await StatusAsync(browser, "/shop/people")); // the cookie, replayed
    }

    [Fact]
    public async Task Another_page_or_another_name_gets_nothing_done_with_a_session_that_is_good()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        HttpClient owner = await people.AsAsync(Role.Owner);
        foreach (
            (string header, string value) in ((string, string)[])[("Origin", "https://evil.example"), ("Sec-Fetch-Site", "cross-site")]
        )
        {
            using HttpRequestMessage foreign = new(HttpMethod.Post, new Uri("/shop/people", UriKind.Relative))
            {
                Content = new FormUrlEncodedContent([new("name", "Mallory"), new("role", "owner")]),
            };
            foreign.Headers.TryAddWithoutValidation(header, value);
            using HttpResponseMessage refused = await owner.SendAsync(foreign, Cancel);
            Assert.True(refused.StatusCode == HttpStatusCode.Forbidden, $"{header}: {refused.StatusCode}");
        }

        using HttpRequestMessage named = new(HttpMethod.Get, new Uri("/shop/people", UriKind.Relative));
        named.Headers.Host = "evil.example";
        using HttpResponseMessage misdirected = await owner.SendAsync(named, Cancel);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, misdirected.StatusCode);
        Assert.DoesNotContain(await people.Use<AccountService>().PeopleAsync(Cancel), one => one.Name == "Mallory");
    }

    /// <summary>Whoever is not signed in is answered before a byte of the body has come, so that nothing can be held up by it.</summary>
    [Theory]
    [InlineData("/shop/people", "application/x-www-form-urlencoded")]
    [InlineData("/listen/recording", "multipart/form-data; boundary=x")]
    [InlineData("/api/batches/00000000-0000-0000-0000-000000000000/coils", "application/json")]
    public async Task A_body_that_never_comes_is_not_waited_for(string address, string type)
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        using TcpClient line = new();
        await line.ConnectAsync(IPAddress.Loopback, people.Shop.Url.Port, Cancel);
        await using NetworkStream stream = line.GetStream();
        string head =
            $"POST {address} HTTP/1.1\r\nHost: 127.0.0.1:{people.Shop.Url.Port}\r\nContent-Type: {type}\r\n"
            + "Content-Length: 1000000\r\n\r\n";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head), Cancel);
        byte[] answer = new byte[12];
        await stream.ReadExactlyAsync(answer, Cancel);
        Assert.Contains(Encoding.ASCII.GetString(answer), (string[])["HTTP/1.1 401", "HTTP/1.1 302"]);
    }

    [Theory]
    [InlineData("/shop/people", 5 << 20)]
    [InlineData("/listen/recording", 41 << 20)]
    public async Task A_body_that_is_too_long_is_refused_and_the_server_goes_on(string address, int bytes)
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        HttpClient owner = await people.AsAsync(Role.Owner);
        using ByteArrayContent body = new(new byte[bytes]);
        body.Headers.TryAddWithoutValidation("Content-Type", "application/x-www-form-urlencoded");
        try
        {
            using HttpResponseMessage answer = await owner.PostAsync(new Uri(address, UriKind.Relative), body, Cancel);
            Assert.InRange((int)answer.StatusCode, 400, 499);
        }
        catch (HttpRequestException)
        {
            // the server shut the line before all of it was sent
        }

        Assert.Equal(HttpStatusCode.OK, await StatusAsync(owner, "/shop/people"));
    }

    [Fact]
    public async Task An_address_that_climbs_gives_no_file()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        string[] climbing =
        [
            "/built/..%2f..%2fshop.db",
            "/built/%2e%2e/%2e%2e/shop.db",
            "/built/....//shop.db",
            "/built/shop.db%00.css",
            "/help/..%2f..%2fappsettings.json",
            "/..%5c..%5cshop.db",
        ];
        using HttpClient nobody = people.Shop.Browser();
        foreach (HttpClient browser in (HttpClient[])[nobody, await people.AsAsync(Role.Owner)])
        {
            foreach (string address in climbing)
            {
                HttpStatusCode status = await StatusAsync(browser, address);
                bool isKept = status is HttpStatusCode.NotFound or HttpStatusCode.BadRequest or HttpStatusCode.Redirect;
                Assert.True(isKept, $"{address}: {status}");
            }
        }
    }

    private static async Task<HttpStatusCode> StatusAsync(HttpClient browser, string address)
    {
        using HttpResponseMessage answer = await browser.GetAsync(new Uri(address, UriKind.Relative), Cancel);
        return answer.StatusCode;
    }

    private static async Task<HttpStatusCode> AskAsync(HttpClient browser, string method, string pattern)
    {
        string address = Parameter()
            .Replace(pattern, part => part.Value.Contains("guid", StringComparison.Ordinal) ? Guid.Empty.ToString() : "1");
        using HttpRequestMessage request = new(new HttpMethod(method), new Uri(address, UriKind.Relative));
        using HttpResponseMessage answer = await browser.SendAsync(request, Cancel);
        return answer.StatusCode;
    }

    private static string[] PatternsOf(ServedShop shop) =>
        [
            .. shop.Use<EndpointDataSource>()
                .Endpoints.OfType<RouteEndpoint>()
                .Select(route => route.RoutePattern.RawText ?? "")
                .Where(pattern => pattern.Length > 0 && !pattern.Contains("{*", StringComparison.Ordinal))
                .Distinct(),
        ];

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Parameter();
}
