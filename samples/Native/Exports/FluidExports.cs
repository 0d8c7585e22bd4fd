using System;
using System.Runtime.InteropServices;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>Refrigerants and their properties.</summary>
internal static unsafe class FluidExports
{
    [UnmanagedCallersOnly(EntryPoint = "rr_fluid_get")]
    public static Status Get(byte* designation, int* fluid)
    {
        try
        {
            Errors.Deref(fluid, nameof(fluid)) = FluidHandles.Add(Fluid.Get(Text.Read(designation, nameof(designation))));
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_fluid_facts_of")]
    public static Status FactsOf(int fluid, FluidFacts* facts)
    {
        try
        {
            Errors.Deref(facts, nameof(facts)) = new FluidFacts(FluidHandles.Get(fluid).Model);
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_saturation_at_temperature")]
    public static Status SaturationAtTemperature(int fluid, double temperature, Saturation* saturation)
    {
        try
        {
            Errors.Deref(saturation, nameof(saturation)) = new Saturation(FluidHandles.Get(fluid).Model.SaturationAtTemperature(temperature));
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_saturation_at_pressure")]
    public static Status SaturationAtPressure(int fluid, double pressure, Saturation* saturation)
    {
        try
        {
            Errors.Deref(saturation, nameof(saturation)) = new Saturation(FluidHandles.Get(fluid).Model.SaturationAtPressure(pressure));
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_state_at")]
    public static Status StateAt(int fluid, double temperature, double pressure, State* state)
    {
        try
        {
            Errors.Deref(state, nameof(state)) = new State(FluidHandles.Get(fluid).Model.StateAt(temperature, pressure));
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_vessel_at_temperature")]
    public static Status VesselAtTemperature(int fluid, double temperature, double density, Vessel* vessel)
    {
        try
        {
            Errors.Deref(vessel, nameof(vessel)) = new Vessel(FluidHandles.Get(fluid).Model.VesselAtTemperature(temperature, density));
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_vessel_at_energy")]
    public static Status VesselAtEnergy(int fluid, double density, double internalEnergy, Vessel* vessel)
    {
        try
        {
            Errors.Deref(vessel, nameof(vessel)) = new Vessel(FluidHandles.Get(fluid).Model.VesselAtEnergy(density, internalEnergy));
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }
}
