using System;
using System.Runtime.CompilerServices;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Fluids;
using Xunit;
using Twin = Refrigerant.Recovery.CoolProp.Tests.StandIn.Twin;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>Release of native states, errors and threads.</summary>
[Collection("native")]
public sealed class StateTests
{
    [StandInFact]
    public void Native_states_are_freed_when_the_fluids_are_gone()
    {
        Collect();
        int before = StandIn.LiveStates;
        UseSomeFluids(before);
        Collect();
        Assert.Equal(0, StandIn.LiveStates);
    }

    [StandInFact]
    public void A_fluid_that_fails_to_load_leaves_no_state_behind()
    {
        Collect();
        CoolPropLibrary library = StandIn.Library;
        int before = StandIn.LiveStates;
        Assert.Throws<CoolPropException>(() => CoolPropFluid.Load("R905", library));
        Assert.Throws<CoolPropException>(() => CoolPropFluid.Load("no such fluid", library));
        Assert.Throws<CoolPropException>(
            () => CoolPropFluid.FromMoleFractions("b", [new("R901", 0.5), new("no such fluid", 0.5)], library));
        Assert.Equal(before, StandIn.LiveStates);
    }

    [StandInFact]
    public void The_engines_text_comes_back_with_the_fluid_and_the_question()
    {
        CoolPropException error = Assert.Throws<CoolPropException>(() => CoolPropFluid.Load("no such fluid", StandIn.Library));
        Assert.Equal("no such fluid", error.Fluid);
        Assert.Equal("loading the fluid", error.Operation);
        Assert.Equal("Error: key [no such fluid] was not found in string_to_index_map in JSONFluidLibrary", error.NativeMessage);
        Assert.Contains(error.NativeMessage, error.Message, StringComparison.Ordinal);
    }

    [StandInFact]
    public void One_fluid_on_many_threads_answers_as_on_one()
    {
        PropertyModel model = CoolPropFluid.Load("R901", StandIn.Library).Model;
        OnThreads(i =>
        {
            double t = 220 + (i % 150);
            Assert.Equal(Twin.R901.Pressure(t), model.SaturationAtTemperature(t).Dew.Pressure, 1e-3);
            Assert.Equal(Twin.R901.GasDensity(t, 1e2), model.StateAt(t, 1e2).Density, 1e-9);
        });
    }

    [StandInFact]
    public void Loading_and_freeing_on_many_threads_never_overlaps_with_another_call()
    {
        CoolPropLibrary library = StandIn.Library;
        PropertyModel shared = CoolPropFluid.Load("R902", library).Model;
        OnThreads(i =>
        {
            double t = 220 + (i % 100);
            Assert.Equal(Twin.R901.Pressure(t), CoolPropFluid.Load("R901", CoolPropLibrary.Open(StandIn.Path)).Model.SaturationAtTemperature(t).Bubble.Pressure, 1e-3);
            Assert.Equal(Twin.R902.Pressure(t), shared.SaturationAtTemperature(t).Bubble.Pressure, 1e-3);
            if (i % 50 == 0)
            {
                GC.Collect();
            }
        });
        Assert.Equal(0, StandIn.Overlaps);
    }

    private static void OnThreads(Action<int> test)
    {
        const int Threads = 8;
        const int Calls = 200;
        using var start = new Barrier(Threads);
        Parallel.For(0, Threads, new ParallelOptions { MaxDegreeOfParallelism = Threads }, thread =>
        {
            // The barrier is a best effort: with fewer workers than threads it must not hold them up.
            start.SignalAndWait(TimeSpan.FromMilliseconds(200));
            for (int i = 0; i < Calls; i++)
            {
                test((thread * Calls) + i);
            }
        });
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void UseSomeFluids(int before)
    {
        CoolPropLibrary library = StandIn.Library;
        Fluid[] fluids =
        [
            CoolPropFluid.Load("R901", library),
            CoolPropFluid.Load("R902", library),
            CoolPropFluid.FromMassFractions("blend", [new("R901", 0.5), new("R902", 0.5)], library),
        ];
        Assert.Equal(before + 3, StandIn.LiveStates);
        GC.KeepAlive(fluids);
    }

    private static void Collect()
    {
        for (int i = 0; i < 3; i++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }
    }
}
