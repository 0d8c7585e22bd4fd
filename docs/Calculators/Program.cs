using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Refrigerant.Recovery.Calculators;
using Refrigerant.Recovery.Calculators.Forms;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#calculators");
builder.RootComponents.Add<HeadOutlet>("head::after");
builder.Services.AddSingleton<Inputs>();
await builder.Build().RunAsync();
