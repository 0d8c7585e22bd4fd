using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Tests.Doubles;
using Refrigerant.Recovery.Tests.Planning;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>A fluid of another engine that is called as an embedded one is not written as if it were that.</summary>
public class ForeignFluidTests
{
    [Theory]
    [InlineData("R-134a")]
    [InlineData("R-410A")]
    public void It_is_refused_without_a_resolver_that_finds_it(string designation)
    {
        var foreign = Fluid.FromModel(new PortOnly(Fluid.Get(designation).Model));
        RecoveryJob job = With(foreign);
        Assert.Contains("is another fluid", Assert.Throws<ArgumentException>(() => RecoveryJobJson.Write(job)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => RecoveryJobJson.Write(job, _ => Fluid.Get(designation)));
        Fluid? Resolve(string name) => name == designation ? foreign : null;
        Assert.Equal(job, RecoveryJobJson.Read(RecoveryJobJson.Write(job, Resolve), Resolve));
    }

    /// <summary>Reading asks the resolver first: what it would find instead is not written.</summary>
    [Fact]
    public void An_embedded_one_is_refused_where_the_resolver_finds_another()
    {
        var foreign = Fluid.FromModel(new PortOnly(Fluid.Get("R-134a").Model));
        Assert.Throws<ArgumentException>(() => RecoveryJobJson.Write(With(Fluid.Get("R-134a")), _ => foreign));
    }

    [Fact]
    public void One_of_the_machines_past_is_refused_too()
    {
        RecoveryJob job = With(Fluid.Get("R-134a")) with { MachinePast = new MachinePast { Refrigerant = Fluid.FromModel(new PortOnly(Fluid.Get("R-22").Model)) } };
        Assert.Throws<ArgumentException>(() => RecoveryJobJson.Write(job));
    }

    private static RecoveryJob With(Fluid fluid)
    {
        RecoveryJob job = Jobs.Chiller();
        return job with { Appliance = job.Appliance with { Fluid = fluid } };
    }
}
