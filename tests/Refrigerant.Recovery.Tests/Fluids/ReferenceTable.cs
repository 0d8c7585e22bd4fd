using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>Rows of the reference files in the tests' data, and the fluids as theory data.</summary>
internal static class ReferenceTable
{
    public static IEnumerable<object[]> PureFluids => Fluid.All
        .Where(fluid => fluid.Model is HelmholtzModel)
        .Select(fluid => new object[] { fluid.Designation });

    /// <summary>The numbers of every row of a fluid.</summary>
    public static IReadOnlyList<double[]> Rows(string file, string fluid) => File
        .ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", file))
        .Where(line => line.StartsWith(fluid + ",", StringComparison.Ordinal))
        .Select(line => line.Split(',').Skip(1).Select(field => double.Parse(field, CultureInfo.InvariantCulture)).ToArray())
        .ToArray();

    public static HelmholtzModel Model(string fluid) => (HelmholtzModel)Fluid.Get(fluid).Model;

    /// <summary>Pressure and Gibbs energy over RT that the equation itself has at a temperature and a density.</summary>
    public static (double Pressure, double Gibbs) Equation(HelmholtzModel model, double temperature, double density)
    {
        PureEquation equation = model.Engine.Equation;
        double[] isotherm = new double[equation.Residual.IsothermLength];
        equation.Residual.Isotherm(equation.ReducingTemperature / temperature, isotherm);
        equation.Caloric(temperature, density, isotherm, out double pressure, out double enthalpy, out double entropy);
        return (pressure, (enthalpy - (temperature * entropy)) / (equation.GasConstant * temperature));
    }
}
