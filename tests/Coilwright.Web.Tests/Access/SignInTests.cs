using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Coilwright.Web.Hosting.Access;
using Coilwright.Workshop.People;

namespace Coilwright.Web.Tests.Access;

/// <summary>Accounts from the first owner to a shared tablet, through the pages.</summary>
public sealed class SignInTests
{
    private const string Password = PeopleOfShop.Password;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_shop_without_accounts_is_open_on_its_computer_and_the_first_owner_is_made_there()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        using HttpClient browser = shop.Browser();
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(browser, "/")).StatusCode);
        Assert.Contains("needs no account", await TextAsync(await GetAsync(browser, "/shop/people")), StringComparison.Ordinal);

        foreach (string weak in (string[])["", "short", "aaaaaaaaaaaaaaaa", "Ines Ines Ines"])
        {
            using HttpResponseMessage refused = await SendAsync(browser, "/shop/people/first", ("name", "Ines"), ("password", weak));
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        }

        using HttpResponseMessage made = await SendAsync(browser, "/shop/people/first", ("name", "Ines"), ("password", Password));
        Assert.Equal(HttpStatusCode.Redirect, made.StatusCode);
        string cookie = Assert.Single(made.Headers.GetValues("Set-Cookie"));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);

        using HttpResponseMessage asked = await GetAsync(browser, "/batches?state=open");
        Assert.Equal(HttpStatusCode.Redirect, asked.StatusCode);
        Assert.Equal("/sign-in?to=%2Fbatches%3Fstate%3Dopen", asked.Headers.Location?.OriginalString);
        using HttpClient owner = shop.Browser(KeyOf(made));
        Assert.Contains("Ines", await TextAsync(await GetAsync(owner, "/shop/people")), StringComparison.Ordinal);
        using HttpResponseMessage twice = await SendAsync(owner, "/shop/people/first", ("name", "Other"), ("password", Password));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, twice.StatusCode);
    }

    [Fact]
    public async Task Signing_in_leads_back_to_where_one_wanted_to_go_and_nowhere_else()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        using HttpClient browser = people.Shop.Browser();
        foreach (
            (string wanted, string reached) in ((string, string)[])
                [("/batches?a=1", "/batches?a=1"), ("//elsewhere.example/", "/"), ("http://elsewhere.example/", "/")]
        )
        {
            using HttpResponseMessage signed = await SignInAsync(browser, Role.Winder, Password, wanted);
            Assert.Equal(HttpStatusCode.Redirect, signed.StatusCode);
            Assert.Equal(reached, signed.Headers.Location?.OriginalString);
        }
    }

    [Fact]
    public async Task A_wrong_password_and_an_unknown_name_are_answered_alike_and_five_lock_the_name_for_a_quarter_of_an_hour()
    {
        PassingClock clock = new();
        await using PeopleOfShop people = await PeopleOfShop.StartAsync(clock);
        using HttpClient browser = people.Shop.Browser();
        string unknown = await TextAsync(await SendAsync(browser, "/sign-in", ("name", "Nobody"), ("password", "wrong and wrong")));
        for (int n = 0; n < SignInService.MostWrong; n++)
        {
            using HttpResponseMessage refused = await SignInAsync(browser, Role.Winder, "wrong and wrong");
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            string known = await refused.Content.ReadAsStringAsync(Cancel);
            Assert.Equal(unknown.Replace("Nobody", PeopleOfShop.NameOf(Role.Winder), StringComparison.Ordinal), known);
        }

        using HttpResponseMessage locked = await SignInAsync(browser, Role.Winder, Password);
        Assert.Contains("wait 15 min", await TextAsync(locked), StringComparison.Ordinal);
        using (HttpResponseMessage other = await SignInAsync(browser, Role.Tester, Password))
        {
            Assert.Equal(HttpStatusCode.Redirect, other.StatusCode);
        }

        clock.Pass(SignInService.Lock);
        using HttpResponseMessage again = await SignInAsync(browser, Role.Winder, Password);
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
    }

    [Fact]
    public async Task One_computer_tries_no_more_than_so_often_whatever_names_it_tries()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        using HttpClient browser = people.Shop.Browser();
        List<HttpStatusCode> told = [];
        for (int n = 0; n <= SignInLimit.MostAMinute; n++)
        {
            using HttpResponseMessage answer = await SendAsync(browser, "/sign-in", ("name", $"Guess {n}"), ("password", ""));
            told.Add(answer.StatusCode);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, told[^1]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, told[0]);
    }

    [Fact]
    public async Task Who_was_invited_chooses_a_password_before_anything_else()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        HttpClient owner = await people.AsAsync(Role.Owner);
        string page = await TextAsync(await SendAsync(owner, "/shop/people", ("name", "Tove"), ("role", "winder")));
        string first = page.Split("<code>")[1].Split("</code>")[0];
        using HttpClient browser = people.Shop.Browser();
        string key = KeyOf(await SendAsync(browser, "/sign-in", ("name", "tove"), ("password", first)));
        using HttpClient tove = people.Shop.Browser(key);

        using HttpResponseMessage sent = await GetAsync(tove, "/");
        Assert.Equal("/account", sent.Headers.Location?.OriginalString);
        using HttpResponseMessage entry = await PostJsonAsync(tove, $"/api/batches/{Guid.NewGuid()}/coils", new { tag = "C-1" });
        Assert.Equal(HttpStatusCode.Unauthorized, entry.StatusCode);
        using HttpResponseMessage wrong = await SendAsync(
            tove,
            "/account/password",
            ("old", "not it at all"),
            ("password", "a boat full of wire")
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        using HttpResponseMessage set = await SendAsync(tove, "/account/password", ("old", first), ("password", "a boat full of wire"));
        Assert.Equal(HttpStatusCode.Redirect, set.StatusCode);
        using HttpClient anew = people.Shop.Browser(KeyOf(set));
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(anew, "/")).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await GetAsync(tove, "/")).StatusCode); // the session of the first password is over
    }

    [Fact]
    public async Task A_shared_tablet_changes_hands_by_PIN_asks_after_half_an_hour_and_gives_no_owner_rights()
    {
        PassingClock clock = new();
        await using PeopleOfShop people = await PeopleOfShop.StartAsync(clock);
        HttpClient tablet = await people.AsAsync(Role.Tester);
        await SetPinAsync(people, Role.Winder, "4711");
        await SetPinAsync(people, Role.Owner, "80351");
        foreach (string weak in (string[])["12", "1234", "9876", "7777", "12ab", "123456789"])
        {
            using HttpResponseMessage refused = await SendAsync(await people.AsAsync(Role.Winder), "/account/pin", ("pin", weak));
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        }

        Assert.Equal(HttpStatusCode.Redirect, (await SwitchAsync(tablet, Role.Winder, "4711")).StatusCode);
        Assert.Contains(
            $"This is <strong>{PeopleOfShop.NameOf(Role.Winder)}",
            await TextAsync(await GetAsync(tablet, "/who")),
            StringComparison.Ordinal
        );
        using HttpResponseMessage test = await SendAsync(tablet, "/test", ("serial", "1"));
        Assert.Equal(HttpStatusCode.Forbidden, test.StatusCode);

        await SwitchAsync(tablet, Role.Owner, "80351");
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(tablet, "/compare")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await GetAsync(tablet, "/shop/people")).StatusCode);
        using HttpResponseMessage pin = await SendAsync(tablet, "/account/pin", ("pin", "9173"));
        Assert.Equal(HttpStatusCode.NotFound, pin.StatusCode);

        clock.Pass(SignInService.PinIdle + TimeSpan.FromMinutes(1));
        using HttpResponseMessage idle = await GetAsync(tablet, "/batches");
        Assert.Equal("/who", idle.Headers.Location?.OriginalString);
        Assert.Contains("Say who stands at this tablet", await TextAsync(await GetAsync(tablet, "/who")), StringComparison.Ordinal);
        await SwitchAsync(tablet, Role.Winder, "4711");
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(tablet, "/batches")).StatusCode);
    }

    [Fact]
    public async Task Five_wrong_PINs_shut_the_PIN_until_the_password_is_given()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        HttpClient tablet = await people.AsAsync(Role.Tester);
        await SetPinAsync(people, Role.Winder, "4711");
        for (int n = 0; n < SignInService.MostWrong; n++)
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await SwitchAsync(tablet, Role.Winder, "4712")).StatusCode);
        }

        string shut = await TextAsync(await SwitchAsync(tablet, Role.Winder, "4711"));
        Assert.Contains("too many wrong PINs", shut, StringComparison.OrdinalIgnoreCase);
        using HttpClient browser = people.Shop.Browser();
        await SignInAsync(browser, Role.Winder, Password);
        Assert.Equal(HttpStatusCode.Redirect, (await SwitchAsync(tablet, Role.Winder, "4711")).StatusCode);
    }

    [Fact]
    public async Task A_session_ends_by_hand_by_idleness_with_the_role_and_with_the_person()
    {
        PassingClock clock = new();
        await using PeopleOfShop people = await PeopleOfShop.StartAsync(clock);
        HttpClient owner = await people.AsAsync(Role.Owner),
            winder = await people.AsAsync(Role.Winder),
            office = await people.AsAsync(Role.Office),
            tester = await people.AsAsync(Role.Tester);

        Guid winderId = await IdAsync(people, Role.Winder);
        SessionRecord session = (await people.Use<SignInService>().SessionsAsync(Cancel)).First(one => one.AccountId == winderId);
        await SendAsync(owner, "/shop/people/sessions/end", ("session", session.Id.ToString()));
        Assert.Equal(HttpStatusCode.Redirect, (await GetAsync(winder, "/")).StatusCode);
        await SendAsync(owner, "/shop/people/role", ("name", PeopleOfShop.NameOf(Role.Office)), ("role", "winder"));
        Assert.Equal(HttpStatusCode.Redirect, (await GetAsync(office, "/")).StatusCode);
        await SendAsync(owner, "/shop/people/remove", ("name", PeopleOfShop.NameOf(Role.Tester)));
        Assert.Equal(HttpStatusCode.Redirect, (await GetAsync(tester, "/")).StatusCode);
        using HttpResponseMessage last = await SendAsync(owner, "/shop/people/remove", ("name", PeopleOfShop.NameOf(Role.Owner)));
        Assert.Contains("is the only owner", await TextAsync(last), StringComparison.Ordinal);
        clock.Pass(SignInService.Idle + TimeSpan.FromMinutes(1));
        Assert.Equal(HttpStatusCode.Redirect, (await GetAsync(owner, "/")).StatusCode);
    }

    [Fact]
    public async Task A_session_outlives_the_server()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        HttpClient winder = await people.AsAsync(Role.Winder);
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(winder, "/")).StatusCode);
        await people.Shop.RestartAsync();
        using HttpClient again = people.Shop.Browser(winder.DefaultRequestHeaders.GetValues("Cookie").Single().Split('=', 2)[1]);
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(again, "/")).StatusCode);
    }

    [Fact]
    public async Task Who_did_it_is_the_account_whatever_was_typed_or_sent()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        HttpClient winder = await people.AsAsync(Role.Winder);
        await SendAsync(winder, "/room", ("room", "21.5"), ("person", "Somebody else"));
        Assert.Equal(PeopleOfShop.NameOf(Role.Winder), (await people.Shop.Services.Records.Room.LatestAsync(Cancel))?.Person);
    }

    [Fact]
    public async Task A_token_opens_what_it_is_for_until_it_ends()
    {
        PassingClock clock = new();
        await using PeopleOfShop people = await PeopleOfShop.StartAsync(clock);
        HttpClient owner = await people.AsAsync(Role.Owner);
        string page = await TextAsync(
            await SendAsync(
                owner,
                "/shop/people/tokens",
                ("token-name", "Bench 2 meter"),
                ("token-role", "instrument"),
                ("token-days", "2")
            )
        );
        string key = page.Split("<code>")[1].Split("</code>")[0];
        using HttpClient bench = people.Shop.Browser();
        bench.DefaultRequestHeaders.Authorization = new("Bearer", key);

        Assert.NotEqual(HttpStatusCode.Unauthorized, (await PostJsonAsync(bench, "/api/meters/none", new { })).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await GetAsync(bench, "/batches")).StatusCode);
        using HttpResponseMessage twice = await SendAsync(
            owner,
            "/shop/people/tokens",
            ("token-name", "bench 2  METER"),
            ("token-role", "winder")
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, twice.StatusCode);
        clock.Pass(TimeSpan.FromDays(2));
        using HttpResponseMessage ended = await PostJsonAsync(bench, "/api/meters/none", new { });
        Assert.Equal(HttpStatusCode.Unauthorized, ended.StatusCode);
        JsonNode told = (await ended.Content.ReadFromJsonAsync<JsonNode>(Cancel))!;
        Assert.NotEmpty(told["problems"]!.AsArray());
        using HttpClient forged = people.Shop.Browser("not-a-key");
        Assert.Equal(HttpStatusCode.Redirect, (await GetAsync(forged, "/")).StatusCode);
    }

    [Fact]
    public async Task Neither_password_nor_key_stands_in_the_shop_s_file()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        HttpClient winder = await people.AsAsync(Role.Winder);
        string key = winder.DefaultRequestHeaders.GetValues("Cookie").Single().Split('=', 2)[1];
        foreach (string file in Directory.GetFiles(Path.GetDirectoryName(people.Shop.File)!, "shop.db*"))
        {
            await using FileStream open = new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using StreamReader reader = new(open, System.Text.Encoding.Latin1);
            string text = await reader.ReadToEndAsync(Cancel);
            Assert.DoesNotContain(Password, text, StringComparison.Ordinal);
            Assert.DoesNotContain(key, text, StringComparison.Ordinal);
        }
    }

    private static async Task<Guid> IdAsync(PeopleOfShop people, Role role) =>
        (await people.Use<AccountService>().PeopleAsync(Cancel)).First(one => one.Name == PeopleOfShop.NameOf(role)).Id;

    private static async Task SetPinAsync(PeopleOfShop people, Role role, string pin)
    {
        using HttpResponseMessage set = await SendAsync(await people.AsAsync(role), "/account/pin", ("pin", pin));
        Assert.Equal(HttpStatusCode.Redirect, set.StatusCode);
    }

    private static Task<HttpResponseMessage> SwitchAsync(HttpClient tablet, Role role, string pin) =>
        SendAsync(tablet, "/who", ("name", PeopleOfShop.NameOf(role)), ("pin", pin));

    private static Task<HttpResponseMessage> SignInAsync(HttpClient browser, Role role, string password, string to = "/") =>
        SendAsync(browser, "/sign-in", ("name", PeopleOfShop.NameOf(role)), ("password", password), ("to", to));

    private static async Task<HttpResponseMessage> SendAsync(
        HttpClient browser,
        string address,
        params (string Name, string Value)[] fields
    )
    {
        using FormUrlEncodedContent form = new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        return await browser.PostAsync(new Uri(address, UriKind.Relative), form, Cancel);
    }

    private static Task<HttpResponseMessage> GetAsync(HttpClient browser, string address) =>
        browser.GetAsync(new Uri(address, UriKind.Relative), Cancel);

    private static Task<HttpResponseMessage> PostJsonAsync(HttpClient browser, string address, object body) =>
        browser.PostAsJsonAsync(new Uri(address, UriKind.Relative), body, Cancel);

    private static async Task<string> TextAsync(HttpResponseMessage answer)
    {
        using (answer)
        {
            return await answer.Content.ReadAsStringAsync(Cancel);
        }
    }

    private static string KeyOf(HttpResponseMessage answer) =>
        answer.Headers.GetValues("Set-Cookie").Single().Split('=', 2)[1].Split(';')[0];
}
