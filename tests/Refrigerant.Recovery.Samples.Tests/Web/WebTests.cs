using System;
using System.IO;
using System.Linq;
using System.Net;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading;
using System.Threading.Tasks;
using Microsoft.AspNetCore.Builder;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Samples.Web;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Web;

/// <summary>The web sample on a free port of the loopback address.</summary>
public sealed class WebTests : IAsyncLifetime
{
    private static readonly string Job = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "job.json"));

    private readonly WebApplication _app = PlanService.Build(["--urls", "http://127.0.0.1:0", "--Logging:LogLevel:Default=None"]);

    private HttpClient _client = new();

    public async Task InitializeAsync()
    {
        await _app.StartAsync();
        _client = new HttpClient { BaseAddress = new Uri(_app.Urls.Single()) };
    }

    public async Task DisposeAsync()
    {
        _client.Dispose();
        await _app.DisposeAsync();
    }

    [Fact]
    public async Task A_job_comes_back_as_its_plan()
    {
        using HttpResponseMessage answer = await Post(Job);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
        PlanDocument plan = RecoveryPlanJson.Read(await answer.Content.ReadAsStringAsync());
        Assert.Equal(PlanDocument.From(RecoveryPlanner.Plan(RecoveryJobJson.Read(Job))), plan);
        Assert.Null(plan.Course);
        using HttpResponseMessage with = await Post(Job, "/plans?course=true");
        Assert.NotEmpty((await with.Content.ReadFromJsonAsync<PlanDocument>())!.Course!);
    }

    [Fact]
    public async Task Every_fault_of_a_job_is_told_by_its_path()
    {
        JsonNode job = JsonNode.Parse(Job)!;
        job["appliance"]!["chargeKilograms"] = -1;
        job["machine"]!["clearanceRatio"] = 7;
        using HttpResponseMessage answer = await Post(job.ToJsonString());
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        JsonNode problem = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal(["$.appliance.chargeKilograms", "$.machine.clearanceRatio"], problem["errors"]!.AsObject().Select(error => error.Key));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[1]")]
    public async Task What_is_no_job_is_a_bad_request(string text)
    {
        using HttpResponseMessage answer = await Post(text);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
    }

    /// <summary>Each value is valid by itself, but the charge does not fit the volume.</summary>
    [Fact]
    public async Task A_job_that_cannot_be_is_told_so()
    {
        JsonNode job = JsonNode.Parse(Job)!;
        job["appliance"]!["chargeKilograms"] = 5000;
        using HttpResponseMessage answer = await Post(job.ToJsonString());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("charge", await answer.Content.ReadAsStringAsync(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_body_without_end_is_refused()
    {
        using HttpResponseMessage answer = await Post(new string(' ', 300 * 1024));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public async Task A_caller_who_leaves_does_not_stop_the_service()
    {
        using var leave = new CancellationTokenSource();
        Task<HttpResponseMessage> left = Post(Job, "/plans", leave.Token);
        await leave.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => left);
        using HttpResponseMessage answer = await Post(Job);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    private Task<HttpResponseMessage> Post(string text, string path = "/plans", CancellationToken cancellation = default) =>
        _client.PostAsync(path, new StringContent(text, Encoding.UTF8, "application/json"), cancellation);
}
