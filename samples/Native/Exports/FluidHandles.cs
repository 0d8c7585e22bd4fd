using System.Collections.Generic;
using System.Threading;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>Handles of refrigerants: their place in a list that only grows. Reading it takes no lock.</summary>
internal static class FluidHandles
{
    private static readonly Lock Gate = new();
    private static readonly Dictionary<string, int> Known = [];
    private static Fluid[] s_fluids = [];

    public static Fluid Get(int handle)
    {
        Fluid[] fluids = Volatile.Read(ref s_fluids);
        return (uint)(handle - 1) < (uint)fluids.Length ? fluids[handle - 1] : throw new InvalidHandleException("fluid", handle);
    }

    public static int Add(Fluid fluid)
    {
        lock (Gate)
        {
            if (!Known.TryGetValue(fluid.Designation, out int handle))
            {
                Warm(fluid.Model);
                Volatile.Write(ref s_fluids, [.. s_fluids, fluid]);
                handle = s_fluids.Length;
                Known.Add(fluid.Designation, handle);
            }

            return handle;
        }
    }

    /// <summary>Builds the tables of the refrigerant, so that no later call has to.</summary>
    private static void Warm(PropertyModel model)
    {
        double temperature = (model.Range.MinimumTemperature + model.Range.MaximumSaturationTemperature) / 2;
        SaturationPoint saturation = model.SaturationAtTemperature(temperature);
        model.SaturationAtPressure(saturation.Bubble.Pressure);
        VesselPoint vessel = model.VesselAtTemperature(temperature, (saturation.Bubble.Density + saturation.Dew.Density) / 2);
        model.VesselAtEnergy(vessel.Bulk.Density, vessel.Bulk.InternalEnergy);
    }
}
