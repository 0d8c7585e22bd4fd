using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Records;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests;

/// <summary>What an initializer can set, a constructor can too: C# 7.3 knows no init-only members.</summary>
public class ConstructorTests
{
    private static readonly Assembly Library = typeof(Fluid).Assembly;

    /// <summary>A keyword cannot name a parameter without an at sign.</summary>
    private static readonly Dictionary<string, string> OtherNames = new() { ["Class"] = "pressureClass" };

    /// <summary>How long a hold takes has a second name from what all stages share.</summary>
    private static readonly HashSet<string> AreOne = [nameof(HoldOptions.Duration), nameof(HoldOptions.MaximumDuration)];

    [Fact]
    public void Every_init_only_member_has_its_parameter()
    {
        string[] missing =
        [
            .. from type in Built()
               let members = InitOnly(type)
               let short_ = Makers(type).Select(maker => members.Where(m => !Takes(maker, m)).ToArray()).OrderBy(left => left.Length).First()
               where short_.Length > 0
               select $"{type.FullName}: {string.Join(", ", short_.Select(m => m.Name))}",
        ];
        Assert.True(missing.Length == 0, string.Join(Environment.NewLine, missing));
    }

    [Fact]
    public void What_is_not_required_is_optional()
    {
        string[] wrong =
        [
            .. from type in Built()
               let members = InitOnly(type)
               let maker = Makers(type).OrderBy(m => members.Count(member => !Takes(m, member))).First()
               from member in members
               let parameter = maker.GetParameters().Single(p => IsOf(p, member))
               where member.GetCustomAttribute<RequiredMemberAttribute>() is not null == parameter.IsOptional
               where !(parameter.Name is "displacement" or "appliance" && !parameter.IsOptional)
               select $"{type.FullName}: {parameter.Name}",
        ];
        Assert.True(wrong.Length == 0, string.Join(Environment.NewLine, wrong));
    }

    /// <summary>What must be given is there; each optional parameter in turn is given something else than its default: the member has it, and no other has changed.</summary>
    [Fact]
    public void What_is_given_arrives_where_it_belongs()
    {
        var wrong = new List<string>();
        var untried = new List<string>();
        int tried = 0;
        foreach (Type type in Built())
        {
            PropertyInfo[] members = InitOnly(type);
            MethodBase maker = Makers(type).OrderBy(m => members.Count(member => !Takes(m, member))).First();
            ParameterInfo[] parameters = maker.GetParameters();
            object? plain = SampleValues.Make(maker, 0, out object?[] arguments);
            if (plain is not null)
            {
                wrong.AddRange(
                    from parameter in parameters
                    where !parameter.IsOptional
                    from member in members
                    where IsOf(parameter, member) && !IsSame(arguments[parameter.Position], member.GetValue(plain))
                    select $"{type.Name}: {member.Name} is not what was given");
            }

            foreach (ParameterInfo parameter in parameters.Where(p => p.IsOptional))
            {
                PropertyInfo member = members.Single(m => IsOf(parameter, m));
                object? before = plain is null ? null : member.GetValue(plain);
                (object Value, object Made)[] given = plain is null ? [] :
                [
                    .. from value in SampleValues.Of(parameter.ParameterType)
                       where !IsSame(value, before)
                       let made = SampleValues.TryMake(maker, [.. arguments.Select((a, i) => i == parameter.Position ? value : a)])
                       where made is not null
                       select (value, made),
                ];
                if (given.Length == 0)
                {
                    untried.Add($"{type.Name}.{member.Name}");
                    continue;
                }

                tried++;
                (object first, object with) = given[0];
                wrong.AddRange(members
                    .Where(m => !IsSame(m == member ? first : m.GetValue(plain), m.GetValue(with)) && (m == member || !AreOne.IsSupersetOf([m.Name, member.Name])))
                    .Select(m => $"{type.Name}: {m.Name} with {parameter.Name}"));
            }
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
        Assert.True(tried > 255 && untried.Count < 5, $"{tried} tried, but not {string.Join(", ", untried)}");
    }

    /// <summary>So that the checks above see something.</summary>
    [Fact]
    public void There_are_such_types() => Assert.InRange(Built().Count(), 35, 200);

    /// <summary>Types that a caller makes: all with init-only members but the documents that only the library fills, and bases.</summary>
    private static IEnumerable<Type> Built()
    {
        HashSet<Type> filled = Reached(typeof(PlanDocument), typeof(RecoveryRecord));
        filled.ExceptWith(Reached(typeof(RecordFacts)));
        return Library.GetExportedTypes().Where(type => !type.IsAbstract && InitOnly(type).Length > 0 && !filled.Contains(type));
    }

    private static HashSet<Type> Reached(params Type[] roots)
    {
        var reached = new HashSet<Type>();
        var next = new Stack<Type>(roots);
        while (next.TryPop(out Type? type))
        {
            foreach (Type argument in type.GenericTypeArguments)
            {
                next.Push(argument);
            }

            if (type.Namespace == typeof(PlanDocument).Namespace && reached.Add(type))
            {
                foreach (PropertyInfo property in type.GetProperties())
                {
                    next.Push(property.PropertyType);
                }
            }
        }

        return reached;
    }

    private static PropertyInfo[] InitOnly(Type type) =>
    [
        .. type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.SetMethod is { IsPublic: true } set && set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))),
    ];

    /// <summary>Constructors, and the static functions that stand for one.</summary>
    private static IEnumerable<MethodBase> Makers(Type type) =>
        type.GetConstructors().Cast<MethodBase>().Concat(type.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(m => m.ReturnType == type && !m.IsSpecialName));

    private static bool IsSame(object? one, object? other) =>
        Equals(one, other) || (one is IQuantity first && other is IQuantity held && IsNear(first, held)) || (one is IEnumerable<object> list && other is IEnumerable<object> second && list.SequenceEqual(second));

    /// <summary>A member may hold a quantity in another unit than it was given in.</summary>
    private static bool IsNear(IQuantity one, IQuantity other)
    {
        Enum unit = one.QuantityInfo.BaseUnitInfo.Value;
        return Math.Abs((double)one.As(unit) - (double)other.As(unit)) <= 1e-12 * Math.Abs((double)one.As(unit));
    }

    private static bool Takes(MethodBase maker, PropertyInfo member) => maker.GetParameters().Any(p => IsOf(p, member));

    private static bool IsOf(ParameterInfo parameter, PropertyInfo member) =>
        string.Equals(parameter.Name, OtherNames.TryGetValue(member.Name, out string? other) ? other : member.Name, StringComparison.OrdinalIgnoreCase)
        && (Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType) == (Nullable.GetUnderlyingType(member.PropertyType) ?? member.PropertyType);
}
