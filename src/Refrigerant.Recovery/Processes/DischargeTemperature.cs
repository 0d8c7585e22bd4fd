using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>Temperature of the gas that leaves the compressor: isentropic compression of the real gas with an efficiency.</summary>
internal static class DischargeTemperature
{
    /// <summary>At a point of a trajectory; the hose warms nothing. Null where the equation of state does not reach that far.</summary>
    public static Temperature? At(PropertyModel model, RecoveryMachine machine, in TrajectoryPoint point)
    {
        if (!(point.DischargePascals > point.SuctionPascals))
        {
            return new Temperature(point.ApplianceKelvins, TemperatureUnit.Kelvin);
        }

        try
        {
            StatePoint suction = Vapor(model, point.ApplianceKelvins, point.SuctionPascals);
            StatePoint isentropic = model.StateAtEntropy(point.DischargePascals, suction.Entropy);
            double enthalpy = suction.Enthalpy + ((isentropic.Enthalpy - suction.Enthalpy) / machine.IsentropicEfficiency);
            return new Temperature(model.StateAtEnthalpy(point.DischargePascals, enthalpy).Temperature, TemperatureUnit.Kelvin);
        }
        catch (PropertyRangeException)
        {
            return null;
        }
        catch (ConvergenceException)
        {
            return null;
        }
    }

    /// <summary>The gas at a temperature and pressure; saturated vapor where rounding puts the pressure at or above the dew pressure.</summary>
    private static StatePoint Vapor(PropertyModel model, double temperature, double pressure)
    {
        if (temperature >= model.Range.MinimumTemperature && temperature <= model.Range.MaximumSaturationTemperature)
        {
            StatePoint dew = model.SaturationAtTemperature(temperature).Dew;
            if (pressure >= dew.Pressure)
            {
                return dew;
            }
        }

        return model.StateAt(temperature, pressure);
    }
}
