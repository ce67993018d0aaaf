//! The sorted list does what the standard tree does, and putting in order what the standard sort does.
#![cfg(not(target_arch = "wasm32"))]

use std::collections::BTreeMap;

use panward::domain::sorted::{SortedMap, SortedSet, in_order};
use proptest::prelude::*;

proptest! {
    #[test]
    fn it_holds_what_a_tree_holds_in_the_same_order(does in prop::collection::vec((0_u8..4, 0_u8..20, any::<u16>()), 0..200)) {
        let (mut map, mut tree) = (SortedMap::new(), BTreeMap::new());
        for (what, key, value) in does {
            match what {
                0 => prop_assert_eq!(map.remove(&key), tree.remove(&key)),
                1 => {
                    let (mine, its) = (map.or_insert_with(key, || value), tree.entry(key).or_insert(value));
                    *mine = mine.wrapping_add(1);
                    *its = its.wrapping_add(1);
                }
                2 => prop_assert_eq!(map.get_mut(&key), tree.get_mut(&key)),
                _ => prop_assert_eq!(map.insert(key, value), tree.insert(key, value)),
            }
            prop_assert_eq!(map.get(&key), tree.get(&key));
            prop_assert_eq!(map.len(), tree.len());
            prop_assert!(map.up_to(&key).eq(tree.range(..=key)));
        }
        prop_assert!(map.iter().eq(tree.iter()));
        prop_assert!(map.keys().rev().eq(tree.keys().rev()));
        let again: SortedMap<u8, u16> = tree.iter().rev().map(|(key, value)| (*key, *value)).collect();
        prop_assert_eq!(again, map);
    }

    #[test]
    fn a_set_has_each_once(ones in prop::collection::vec(0_u8..20, 0..50)) {
        let mut set = SortedSet::new();
        let mut seen = Vec::new();
        for one in ones {
            prop_assert_eq!(set.add(one), !seen.contains(&one));
            seen.push(one);
            prop_assert!(set.contains(&one));
        }
    }

    #[test]
    fn a_list_is_put_in_order_and_equal_keys_stay_as_they_stood(mut list in prop::collection::vec((0_u8..8, any::<u16>()), 0..80)) {
        let mut expected = list.clone();
        expected.sort_by_key(|(key, _)| *key);
        in_order(&mut list, |(key, _)| *key);
        prop_assert_eq!(list, expected);
    }
}
